//! The rule as an expression that is compiled once.

use anyhow::{Context, anyhow, bail};
use serde_json::Value;
use zen_expression::expression::Standard;
use zen_expression::vm::VM;
use zen_expression::{Scope, Variable, compile_expression};

use crate::answers::{Said, verdict_of};

/// The days of a course, its block and its last blocked day, written out where they are needed: there are no functions.
const RULE: &str = r"{
    verdict: some(courses, #.placed <= on and (#.out <= on
            ? (#.supers_off ? max([#.withdrawal, #.wait]) : #.wait) > 0
                and on <= #.out + (#.supers_off ? max([#.withdrawal, #.wait]) : #.wait)
            : #.supers_off))
        ? 'no'
        : (some(courses, #.placed <= on and not (#.documented)) ? 'unknown' : 'yes'),
    last: some(courses, #.placed <= on and #.supers_off and #.out == never)
        ? 0
        : max(map(courses, #.placed <= on
            ? ((#.supers_off ? max([#.withdrawal, #.wait]) : #.wait) > 0
                ? #.out + (#.supers_off ? max([#.withdrawal, #.wait]) : #.wait)
                : (#.supers_off and #.placed < #.out ? #.out - 1 : 0))
            : 0))
}";

pub(crate) struct Expression {
    compiled: zen_expression::Expression<Standard>,
    machine: VM,
    scope: Scope,
}

impl Expression {
    pub(crate) fn new(facts: &Value) -> anyhow::Result<Expression> {
        let compiled = compile_expression(RULE).map_err(|error| anyhow!("{error:?}"))?;
        let scope = Scope::new(Variable::from(facts.clone()));
        Ok(Expression { compiled, machine: VM::new(), scope })
    }

    pub(crate) fn answer(&mut self) -> anyhow::Result<Said> {
        let answer = self.compiled.evaluate_with_scope(&self.scope, &mut self.machine);
        let answer = answer.map_err(|error| anyhow!("{error:?}"))?;
        let verdict = answer.dot("verdict").context("there is no verdict")?;
        let last = match answer.dot("last") {
            Some(Variable::Number(last)) => i64::try_from(last)?,
            other => bail!("{other:?} is no day"),
        };
        let word = verdict.as_str().context("the verdict is no word")?;
        Ok(Said { verdict: verdict_of(word)?, last: Some(last).filter(|last| *last > 0) })
    }
}
