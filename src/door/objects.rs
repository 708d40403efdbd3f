//! Objects out of git's store: one git tells sizes, one hands out bytes.

use std::io::{BufRead as _, BufReader, Read as _, Write as _};
use std::process::{Child, ChildStdin, ChildStdout};
use std::sync::mpsc::{Receiver, channel};

use super::git::{Git, LONGEST, end};

/// What git knows of an object, and its bytes if it was asked for them.
#[derive(Debug)]
pub(super) struct Object {
    pub(super) size: u64,
    pub(super) bytes: Vec<u8>,
}

/// The store.
#[derive(Debug)]
pub(super) struct Objects {
    sizes: Talk,
    contents: Talk,
}

impl Objects {
    pub(super) fn of(git: &Git) -> std::io::Result<Self> {
        let sizes = Talk::with(git.talk(&["cat-file", "--batch-check"])?, false)?;
        Ok(Self { sizes, contents: Talk::with(git.talk(&["cat-file", "--batch"])?, true)? })
    }

    /// The size of an object of a kind.
    pub(super) fn size(&mut self, name: &str, kind: &str) -> Result<u64, String> {
        self.sizes.ask(name, kind).map(|object| object.size)
    }

    /// The bytes of an object whose size was found bearable.
    pub(super) fn bytes(&mut self, name: &str, kind: &str) -> Result<Vec<u8>, String> {
        self.contents.ask(name, kind).map(|object| object.bytes)
    }
}

/// One git and the thread that listens to it, so that waiting can end.
#[derive(Debug)]
struct Talk {
    git: Child,
    questions: Option<ChildStdin>,
    answers: Receiver<Result<(String, Object), String>>,
}

impl Talk {
    fn with(mut git: Child, with_bytes: bool) -> std::io::Result<Self> {
        let gone = || std::io::Error::other("git has no pipe");
        let (questions, output) = (git.stdin.take().ok_or_else(gone)?, git.stdout.take().ok_or_else(gone)?);
        let (send, answers) = channel();
        let listen = move || {
            let mut output = BufReader::new(output);
            while let Some(answer) = heard(&mut output, with_bytes) {
                if send.send(answer).is_err() {
                    break;
                }
            }
        };
        std::thread::Builder::new().spawn(listen)?;
        Ok(Self { git, questions: Some(questions), answers })
    }

    fn ask(&mut self, name: &str, kind: &str) -> Result<Object, String> {
        let asked =
            self.questions.as_mut().map(|questions| writeln!(questions, "{name}").and_then(|()| questions.flush()));
        let heard = match asked {
            Some(Ok(())) => self.answers.recv_timeout(LONGEST).ok(),
            _ => None,
        };
        let Some(answer) = heard else {
            end(&mut self.git);
            self.questions = None;
            return Err(format!("git stops answering at object {name}; `git fsck` tells what is broken"));
        };
        match answer? {
            (found, object) if found == kind => Ok(object),
            (found, _) => Err(format!("object {name} is a {found}, not a {kind}")),
        }
    }
}

/// `<name> <kind> <size>`, then the bytes and the end of a line; `None` at the end.
fn heard(output: &mut BufReader<ChildStdout>, with_bytes: bool) -> Option<Result<(String, Object), String>> {
    let mut header = String::new();
    // A header is short; a git that says more is none.
    if output.take(4096).read_line(&mut header).ok()? == 0 {
        return None;
    }
    let mut words = header.split_whitespace();
    let (name, kind, size) = (words.next()?, words.next()?, words.next());
    let Some(size) = size.and_then(|size| size.parse::<u64>().ok()) else {
        return Some(Err(format!("object {name} is {kind} in this clone: fetch it, or compare two folders")));
    };
    let mut object = Object { size, bytes: Vec::new() };
    if with_bytes {
        output.take(size).read_to_end(&mut object.bytes).ok().filter(|count| *count as u64 == size)?;
        output.read_exact(&mut [0]).ok()?;
    }
    Some(Ok((kind.to_owned(), object)))
}

impl Drop for Talk {
    fn drop(&mut self) {
        // Without questions it ends; nobody waits for what it says.
        drop(self.questions.take());
        end(&mut self.git);
    }
}
