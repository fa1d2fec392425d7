//! The rule as a policy in Rego.

use anyhow::{Context, anyhow};
use regorus::languages::rego::compiler::Compiler;
use regorus::rvm::RegoVM;
use regorus::{CompiledPolicy, Engine, Rc, Value};

use crate::answers::{Said, verdict_of};

const RULE: &str = r#"
package supering

days(course) := max([course.withdrawal, course.wait]) if course.supers_off

days(course) := course.wait if not course.supers_off

blocked(course) if {
    course.out <= input.on
    days(course) > 0
    input.on <= course.out + days(course)
}

blocked(course) if {
    input.on < course.out
    course.supers_off
}

last(course) := course.out + days(course) if {
    days(course) > 0
} else := course.out - 1 if {
    course.supers_off
    course.placed < course.out
} else := 0

given := [course | some course in input.courses; course.placed <= input.on]

is_blocked if {
    some course in given
    blocked(course)
}

is_open if {
    some course in given
    not course.documented
}

is_open_ended if {
    some course in given
    course.supers_off
    course.out == input.never
}

lasts := [day | some course in given; day := last(course)]

default verdict := "yes"

verdict := "no" if is_blocked

verdict := "unknown" if {
    is_open
    not is_blocked
}

default last_blocked := null

last_blocked := max(lasts) if {
    max(lasts) > 0
    not is_open_ended
}

answer := {"verdict": verdict, "last": last_blocked}
"#;

const ASKED: &str = "data.supering.answer";

pub(crate) struct Policy {
    compiled: CompiledPolicy,
    machine: RegoVM,
    facts: Value,
}

impl Policy {
    pub(crate) fn new(facts: &serde_json::Value) -> anyhow::Result<Policy> {
        let mut engine = Engine::new();
        engine.add_policy("supering.rego".to_owned(), RULE.to_owned())?;
        let compiled = engine.compile_with_entrypoint(&Rc::from(ASKED))?;
        let program =
            Compiler::compile_from_policy(&compiled, &[ASKED]).map_err(|error| anyhow!("{error}"))?;
        let mut machine = RegoVM::new();
        machine.load_program(program);
        machine.set_data(Value::new_object()).map_err(|error| anyhow!("{error}"))?;
        Ok(Policy { compiled, machine, facts: Value::from_json_str(&facts.to_string())? })
    }

    /// The answer of the virtual machine, whose program is compiled once.
    pub(crate) fn answer(&mut self) -> anyhow::Result<Said> {
        self.machine.set_input(self.facts.clone());
        let answer = self.machine.execute().map_err(|error| anyhow!("{error}"))?;
        read(&answer)
    }

    /// The answer of the interpreter.
    pub(crate) fn answer_by_interpreter(&self) -> anyhow::Result<Said> {
        read(&self.compiled.eval_with_input(self.facts.clone())?)
    }
}

/// Takes verdict and day out of the answer, as a program must.
fn read(answer: &Value) -> anyhow::Result<Said> {
    let fields = answer.as_object()?;
    let field = |name: &str| fields.get(&Value::from(name)).context("the answer lacks a field");
    let verdict = verdict_of(field("verdict")?.as_string()?)?;
    Ok(Said { verdict, last: field("last")?.as_i64().ok() })
}
