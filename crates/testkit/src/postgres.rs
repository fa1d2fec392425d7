//! A private PostgreSQL for the tests of one program. It listens on loopback only, and ends with the program, however that ends.

use std::io::{BufRead, BufReader, Read, Write};
use std::net::TcpListener;
use std::path::PathBuf;
use std::process::{Child, ChildStdout, Command, Stdio};
use std::sync::atomic::{AtomicU32, Ordering};
use std::sync::{Mutex, OnceLock};

use crate::find_postgres;

/// Makes a cluster, says so, and ends it when nobody holds the other end of its standard input any more. A line there is a
/// signal that ends the server, which is then started again.
const RUN: &str = r#"
set -eu
dir=$(mktemp -d)
"$bin/initdb" --pgdata="$dir/data" --auth=trust --username=postgres --encoding=UTF8 --locale=C --no-sync >/dev/null
start() {
    "$bin/postgres" -D "$dir/data" -k "$dir" -p "$port" -c listen_addresses=127.0.0.1 \
        -c fsync="$waits" -c full_page_writes="$waits" -c max_connections=300 -c shared_buffers=64MB >>"$dir/log" 2>&1 </dev/null &
    server=$!
    tries=0
    until "$bin/pg_isready" -q -h 127.0.0.1 -p "$port"; do
        tries=$((tries + 1))
        if [ "$tries" -gt 300 ]; then cat "$dir/log"; rm -rf "$dir"; exit 1; fi
        # One that was killed leaves its helpers behind for a moment, and the next does not start beside them.
        kill -0 "$server" 2>/dev/null || { start; return; }
        sleep 0.1
    done
    echo ready
}
start
while read -r signal; do
    kill "-$signal" "$server" 2>/dev/null || true
    wait "$server" 2>/dev/null || true
    start
done
kill -INT "$server" 2>/dev/null || true
wait "$server" 2>/dev/null || true
rm -rf "$dir"
"#;

/// A cluster that runs.
pub struct Cluster {
    /// Its port on loopback.
    pub port: u16,
    bin: PathBuf,
    runner: Mutex<Runner>,
}

/// The shell that runs it.
struct Runner {
    shell: Child,
    said: BufReader<ChildStdout>,
}

/// The cluster that all tests of this program share.
///
/// # Panics
/// If PostgreSQL is not on this machine, or does not start.
#[must_use]
pub fn shared() -> &'static Cluster {
    static SHARED: OnceLock<Cluster> = OnceLock::new();
    SHARED.get_or_init(Cluster::start)
}

impl Cluster {
    /// Starts one of its own. What the disk does is not tested, so nothing waits for it.
    ///
    /// # Panics
    /// If PostgreSQL is not on this machine, or does not start.
    #[must_use]
    pub fn start() -> Cluster {
        Cluster::waiting("off")
    }

    /// Starts one whose commits are on the disk, as they are in earnest.
    ///
    /// # Panics
    /// As [`Cluster::start`].
    #[must_use]
    pub fn durable() -> Cluster {
        Cluster::waiting("on")
    }

    /// Whether there is a server on this machine that could be started.
    #[must_use]
    pub fn is_possible() -> bool {
        find_postgres::folder().is_some()
    }

    fn waiting(waits: &str) -> Cluster {
        let bin = find_postgres::folder().expect("PostgreSQL 15 or later is on this machine");
        let port =
            TcpListener::bind("127.0.0.1:0").and_then(|free| free.local_addr()).expect("a free port").port();
        // The server refuses to run as root.
        let is_root = Command::new("id").arg("-u").output().is_ok_and(|id| id.stdout == b"0\n");
        let mut command = if is_root {
            let mut command = Command::new("runuser");
            command.args(["-u", "postgres", "--", "sh", "-c", RUN]);
            command
        } else {
            let mut command = Command::new("sh");
            command.args(["-c", RUN]);
            command
        };
        command
            .current_dir("/")
            .env("bin", &bin)
            .env("waits", waits)
            .env("port", port.to_string())
            .env_remove("PGDATA");
        let mut shell =
            command.stdin(Stdio::piped()).stdout(Stdio::piped()).spawn().expect("a shell for the server");
        let said = BufReader::new(shell.stdout.take().expect("its output"));
        let mut runner = Runner { shell, said };
        runner.is_ready();
        Cluster { port, bin, runner: Mutex::new(runner) }
    }

    /// Sends the server a signal that ends it, such as `INT` or `KILL`, and starts it again.
    ///
    /// # Panics
    /// If it does not start.
    pub fn restart(&self, signal: &str) {
        let mut runner = self.runner.lock().expect("nobody stopped while the server was started again");
        let shell = runner.shell.stdin.as_mut().expect("it is open until the end");
        writeln!(shell, "{signal}").and_then(|()| shell.flush()).expect("the shell listens");
        runner.is_ready();
    }

    /// The address of an empty schema of its own.
    ///
    /// # Panics
    /// If it cannot be made.
    #[must_use]
    pub fn empty(&self) -> String {
        static LAST: AtomicU32 = AtomicU32::new(0);
        let name = format!("s{}", LAST.fetch_add(1, Ordering::Relaxed));
        self.run(&format!("create schema {name}"));
        format!("postgres://postgres@127.0.0.1:{}/postgres?options=-csearch_path%3D{name}", self.port)
    }

    /// Runs a statement as whoever owns everything. Returns what it prints, fields separated by `|`.
    ///
    /// # Panics
    /// If it fails.
    pub fn run(&self, sql: &str) -> String {
        let done = Command::new(self.bin.join("psql"))
            .args([
                "-XqtA",
                "-v",
                "ON_ERROR_STOP=1",
                "-h",
                "127.0.0.1",
                "-U",
                "postgres",
                "-d",
                "postgres",
                "-c",
                sql,
            ])
            .args(["-p", &self.port.to_string()])
            .output()
            .expect("psql runs");
        assert!(done.status.success(), "{sql}: {}", String::from_utf8_lossy(&done.stderr));
        String::from_utf8_lossy(&done.stdout).into_owned()
    }
}

impl Drop for Cluster {
    fn drop(&mut self) {
        // It ends when its input does.
        if let Ok(runner) = self.runner.get_mut() {
            drop(runner.shell.stdin.take());
            let _ = runner.shell.wait();
        }
    }
}

impl Runner {
    fn is_ready(&mut self) {
        let mut said = String::new();
        self.said.read_line(&mut said).expect("a line");
        if said != "ready\n" {
            let _ = self.said.read_to_string(&mut said);
            panic!("PostgreSQL did not start: {said}");
        }
    }
}
