//! Objects out of git's store: one git tells sizes, one hands out bytes.

use std::collections::HashMap;
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
    /// Files that were asked for ahead and not read yet.
    ready: HashMap<String, Vec<u8>>,
}

/// The most bytes that are asked for ahead.
const MOST_AHEAD: u64 = 32 << 20;

impl Objects {
    pub(super) fn of(git: &Git) -> std::io::Result<Self> {
        let sizes = Talk::with(git.talk(&["cat-file", "--batch-check"])?, false)?;
        let contents = Talk::with(git.talk(&["cat-file", "--batch"])?, true)?;
        Ok(Self { sizes, contents, ready: HashMap::new() })
    }

    /// Asks for files ahead, those of at most so many bytes, so that nobody waits for each by itself. What cannot be had
    /// is told to whoever reads it.
    ///
    /// # Errors
    /// Git stops answering: at which of the files, by its number, and that it does.
    pub(super) fn expect(&mut self, names: &[&str], most: u64) -> Result<(), (usize, String)> {
        self.ready.clear();
        let sizes = self.sizes.ask_all(names)?;
        let mut left = MOST_AHEAD;
        let small = |(number, answer): (usize, Answer)| {
            let (kind, object) = answer.ok()?;
            left = left.checked_sub(object.size).filter(|_| kind == BLOB && object.size <= most)?;
            Some(number)
        };
        let some: Vec<usize> = sizes.into_iter().enumerate().filter_map(small).collect();
        let asked: Vec<&str> = some.iter().map(|number| names[*number]).collect();
        let answers = self.contents.ask_all(&asked).map_err(|(at, said)| (some[at], said))?;
        let whole = asked.into_iter().zip(answers).filter_map(|(name, answer)| Some((name, answer.ok()?)));
        let blobs = whole.filter(|(_, (kind, _))| kind == BLOB);
        self.ready = blobs.map(|(name, (_, object))| (name.to_owned(), object.bytes)).collect();
        Ok(())
    }

    /// The size of an object of a kind.
    pub(super) fn size(&mut self, name: &str, kind: &str) -> Result<u64, String> {
        match self.ready.get(name).filter(|_| kind == BLOB) {
            Some(bytes) => Ok(bytes.len() as u64),
            None => self.sizes.ask(name, kind).map(|object| object.size),
        }
    }

    /// The bytes of an object whose size was found bearable.
    pub(super) fn bytes(&mut self, name: &str, kind: &str) -> Result<Vec<u8>, String> {
        match self.ready.remove(name).filter(|_| kind == BLOB) {
            Some(bytes) => Ok(bytes),
            None => self.contents.ask(name, kind).map(|object| object.bytes),
        }
    }
}

/// The kind of an object and the object, or that it is not there.
type Answer = Result<(String, Object), String>;

/// What git calls the object of a file.
const BLOB: &str = "blob";

/// One git and the thread that listens to it, so that waiting can end.
#[derive(Debug)]
struct Talk {
    git: Child,
    questions: Option<ChildStdin>,
    answers: Receiver<Answer>,
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
        let mut answers = self.ask_all(&[name]).map_err(|(_, said)| said)?;
        match answers.pop().unwrap_or_else(|| Err(stopped(name)))? {
            (found, object) if found == kind => Ok(object),
            (found, _) => Err(format!("object {name} is a {found}, not a {kind}")),
        }
    }

    /// Asks for all of them at once; the answers come in that order. The thread that listens takes them in meanwhile, so
    /// neither side waits for the other.
    fn ask_all(&mut self, names: &[&str]) -> Result<Vec<Answer>, (usize, String)> {
        let list: String = names.iter().flat_map(|name| [name, "\n"]).collect();
        let asked = self
            .questions
            .as_mut()
            .map(|questions| questions.write_all(list.as_bytes()).and_then(|()| questions.flush()));
        let mut answers = Vec::new();
        for (number, name) in names.iter().enumerate() {
            // What was asked before git went away may have been answered all the same.
            let heard = asked.as_ref().and_then(|_| self.answers.recv_timeout(LONGEST).ok());
            let Some(answer) = heard else {
                end(&mut self.git);
                self.questions = None;
                return Err((number, stopped(name)));
            };
            answers.push(answer);
        }
        Ok(answers)
    }
}

fn stopped(name: &str) -> String {
    format!("git stops answering at object {name}; `git fsck` tells what is broken")
}

/// `<name> <kind> <size>`, then the bytes and the end of a line; `None` at the end.
fn heard(output: &mut BufReader<ChildStdout>, with_bytes: bool) -> Option<Answer> {
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
