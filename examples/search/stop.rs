//! Ctrl-C, which ends a long run with what it has, and how far it is.

use std::io::{IsTerminal, Write};
use std::process::ExitCode;
use std::sync::atomic::{AtomicBool, Ordering};
use std::time::Instant;

static STOPPED: AtomicBool = AtomicBool::new(false);

/// The exit code of a run that Ctrl-C ended, as shells have it: 128 and the number of the signal.
pub(crate) const CODE: u8 = 130;

/// Hears Ctrl-C from here on; the second time it ends the program at once.
pub(crate) fn listen() {
    let heard = ctrlc::set_handler(|| {
        if STOPPED.swap(true, Ordering::Relaxed) {
            std::process::exit(i32::from(CODE));
        }
    });
    // Without it Ctrl-C ends the program, as ever.
    let _ = heard;
}

pub(crate) fn is_heard() -> bool {
    STOPPED.load(Ordering::Relaxed)
}

/// The exit code of a run that was stopped, or its own.
pub(crate) fn code_or(own: ExitCode) -> ExitCode {
    if is_heard() { ExitCode::from(CODE) } else { own }
}

/// How far a run is, told to a terminal each second, and where it was stopped.
pub(crate) struct Progress {
    what: &'static str,
    all: u64,
    done: u64,
    begun: Instant,
    told: u64,
    is_terminal: bool,
}

impl Progress {
    pub(crate) fn of(all: u64, what: &'static str) -> Self {
        let is_terminal = std::io::stderr().is_terminal();
        Self { what, all, done: 0, begun: Instant::now(), told: 0, is_terminal }
    }

    /// So much is done; whether to go on.
    pub(crate) fn goes_on(&mut self, done: u64) -> bool {
        self.done = done;
        if self.is_terminal && self.begun.elapsed().as_secs() > self.told {
            self.told = self.begun.elapsed().as_secs();
            let _ = write!(std::io::stderr(), "\r{done} of {} {}", self.all, self.what);
        }
        !is_heard()
    }

    /// Takes the line away; says where the run was stopped, if it was.
    pub(crate) fn ended(self) -> Option<String> {
        if self.told > 0 {
            let _ = write!(std::io::stderr(), "\r{:50}\r", "");
        }
        is_heard().then(|| format!("stopped at {} of {} {}", self.done, self.all, self.what))
    }
}
