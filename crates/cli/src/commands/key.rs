//! `combclear key`: makes, lists and ends the keys that the service asks for where others can reach it.

use base64::Engine;
use base64::engine::general_purpose::URL_SAFE_NO_PAD;
use combclear_domain::basics::words::HoldingName;
use combclear_domain::journal::Hash;
use combclear_domain::journal::key::{Key, KeyId, Role};
use combclear_store::Holdings;
use combclear_wording::terminal::keys as say;
use combclear_wording::{Label, Words};
use serde::Serialize;

use super::{print, print_as_is, print_json};
use crate::args::{KeyAdd, KeyCommand, KeyEnd, KeyList, Place};
use crate::failure::Failure;
use crate::layout::Table;
use crate::{Outcome, clock, place};

/// A key as JSON.
#[derive(Serialize)]
struct Row {
    id: String,
    holding: Option<String>,
    role: &'static str,
    holder: String,
    made_at: String,
    until: Option<String>,
    ended_at: Option<String>,
    /// Whether it holds today.
    holds: bool,
    /// The whole key, when it is made. It is kept nowhere.
    #[serde(skip_serializing_if = "Option::is_none")]
    key: Option<String>,
}

impl Row {
    fn of(key: &Key, whole: Option<String>) -> Row {
        Row {
            id: key.id.to_string(),
            holding: key.holding.as_ref().map(ToString::to_string),
            role: key.role.as_str(),
            holder: key.holder.to_string(),
            made_at: key.made_at.to_string(),
            until: key.until.map(|day| day.to_string()),
            ended_at: key.ended_at.map(|at| at.to_string()),
            holds: key.holds_on(clock::today()),
            key: whole,
        }
    }
}

pub(crate) async fn run(at: &Place, command: &KeyCommand) -> Result<Outcome, Failure> {
    match command {
        KeyCommand::Add(ask) if ask.role == Role::Operator => {
            // The operator begins holdings, so there may be none yet.
            place::with_holdings(at, async |holdings| add(holdings, None, ask).await).await
        }
        KeyCommand::Add(ask) => {
            place::with_holding(at, async |holdings, holding| add(holdings, Some(holding), ask).await).await
        }
        KeyCommand::List(ask) => {
            place::with_holdings_there(at, async |holdings| list(holdings, ask).await).await
        }
        KeyCommand::End(ask) => {
            place::with_holdings_there(at, async |holdings| end(holdings, ask).await).await
        }
    }
}

async fn add(holdings: &Holdings, holding: Option<HoldingName>, ask: &KeyAdd) -> Result<Outcome, Failure> {
    let words = Words::english();
    let today = clock::today();
    if let Some(until) = ask.until.filter(|until| *until < today) {
        return Err(Failure::new(say::over_already(words, until, today), Label::KeyUntilHelp));
    }
    let (id, secret) = new_key()?;
    let (role, holder, until) = (ask.role, ask.holder.clone(), ask.until);
    let key = Key { id, holding, role, holder, made_at: clock::now(), until, ended_at: None };
    holdings.journal().add_key(&key, Hash::of_content(secret.as_bytes())).await?;
    let whole = format!("{id}.{secret}");
    if ask.json {
        print_json(&Row::of(&key, Some(whole)))?;
        return Ok(Outcome::Done);
    }
    print(&say::made(words, &key))?;
    // On a line of its own and never wrapped, so that it can be copied.
    print_as_is(&whole)?;
    Ok(Outcome::Done)
}

async fn list(holdings: &Holdings, ask: &KeyList) -> Result<Outcome, Failure> {
    let words = Words::english();
    let keys = holdings.journal().keys().await?;
    if ask.json {
        let rows: Vec<Row> = keys.iter().map(|key| Row::of(key, None)).collect();
        print_json(&rows)?;
        return Ok(Outcome::Done);
    }
    if keys.is_empty() {
        print(words.label(Label::KeyNone))?;
        return Ok(Outcome::Done);
    }
    let heads = [
        Label::KeyHeadId,
        Label::KeyHeadRole,
        Label::KeyHeadHolding,
        Label::KeyHeadHolder,
        Label::KeyHeadHolds,
    ];
    let mut table = Table::headed(words, heads);
    for key in &keys {
        let holding = key.holding.as_ref().map(ToString::to_string).unwrap_or_default();
        let cells = [key.id.to_string(), key.role.as_str().to_owned(), holding, key.holder.to_string()];
        table.row(cells.into_iter().chain([say::holds(words, key, clock::today())]));
    }
    print(&table.to_string())?;
    Ok(Outcome::Done)
}

async fn end(holdings: &Holdings, ask: &KeyEnd) -> Result<Outcome, Failure> {
    let words = Words::english();
    let journal = holdings.journal();
    let Some((key, _)) = journal.key(ask.id).await? else {
        return Err(Failure::new(say::no_such(words, ask.id), Label::KeyNoSuchHelp));
    };
    let ended = journal.end_key(ask.id, clock::now()).await?;
    print(&if ended { say::ended(words, &key) } else { say::ended_before(words, &key) })?;
    Ok(Outcome::Done)
}

/// Signs of an id: no letter that looks like a digit.
const SIGNS: &[u8; 32] = b"0123456789abcdefghjkmnpqrstvwxyz";

/// A new id, and a new secret of 256 bits from the system.
fn new_key() -> Result<(KeyId, String), Failure> {
    let words = Words::english();
    let no_chance = |why: &str| Failure::new(say::no_chance(words, why), Label::FailureLookAtTheMachine);
    let (mut named, mut secret) = ([0; KeyId::LENGTH], [0; 32]);
    getrandom::fill(&mut named).map_err(|error| no_chance(&error.to_string()))?;
    getrandom::fill(&mut secret).map_err(|error| no_chance(&error.to_string()))?;
    let sign = |byte: &u8| SIGNS.get(usize::from(byte % 32)).copied().map_or('0', char::from);
    let id: String = named.iter().map(sign).collect();
    let id = id.parse().map_err(|_| no_chance(&id))?;
    Ok((id, URL_SAFE_NO_PAD.encode(secret)))
}
