//! A server or a database that is killed while it writes: what was acknowledged is kept, and what was not can be sent again.

use std::sync::atomic::AtomicUsize;
use std::time::Duration;

use crate::bench::Bench;
use crate::killed_rounds::{Tally, rounds, write_until};
use crate::server::Server;

/// Every phase of a write, which takes a few milliseconds.
fn pause(round: u64) -> Duration {
    Duration::from_micros(round * 1_700 % 40_000)
}

fn kill_the_server(bench: &Bench) -> String {
    let next = AtomicUsize::new(3);
    let mut tally = Tally::default();
    for round in 0..rounds() {
        let mut server = Server::start(bench);
        let sent = write_until(server.port, &next, pause(round), || {
            server.child.kill().unwrap();
            server.child.wait().unwrap();
        });
        tally.take_in(round, bench, &Server::start(bench), sent);
    }
    tally.end(rounds(), bench)
}

#[test]
fn a_server_killed_while_it_writes_keeps_what_it_acknowledged_and_takes_the_rest_again() {
    println!("{}", kill_the_server(&Bench::with_mine()));
}

#[cfg(postgres)]
#[test]
fn the_same_with_a_database_on_a_server() {
    let bench = Bench::on(combclear_testkit::postgres::shared().empty()).filled_with_mine();
    println!("{}", kill_the_server(&bench));
}

/// The service stays, and answers again as soon as the database does. Nobody has to do anything.
#[cfg(postgres)]
#[test]
fn a_database_killed_under_a_service_that_goes_on_loses_nothing_that_was_acknowledged() {
    let cluster = combclear_testkit::postgres::Cluster::start();
    let bench = Bench::on(cluster.empty()).filled_with_mine();
    let next = AtomicUsize::new(3);
    let mut tally = Tally::default();
    let server = Server::start(&bench);
    for round in 0..rounds() {
        let signal = if round % 4 == 3 { "INT" } else { "KILL" };
        let sent = write_until(server.port, &next, pause(round), || cluster.restart(signal));
        // A connection from before may be met once more.
        let ready = (0..100).any(|_| server.ask("GET /readyz", "").0 == 200);
        assert!(ready, "round {round}: the service does not find its database again");
        tally.take_in(round, &bench, &server, sent);
    }
    println!("{}", tally.end(rounds(), &bench));
}
