//! A folder to start the program in, and what a run left.

use std::collections::BTreeMap;
use std::ffi::OsString;
use std::io::Write;
use std::path::Path;
use std::process::Child;
use std::process::Command;
use std::process::Output;
use std::process::Stdio;

use tempfile::TempDir;

/// An empty folder to start the program in, with nothing of the shell's settings.
pub struct Place(TempDir);

impl Place {
    pub fn new() -> Self {
        Self(tempfile::tempdir().expect("a folder"))
    }

    pub fn path(&self) -> &Path {
        self.0.path()
    }

    pub fn command(&self, args: &[&str]) -> Command {
        let mut command = Command::new(env!("CARGO_BIN_EXE_spoonround"));
        command.args(args).current_dir(self.path()).env_clear().stdin(Stdio::null());
        command
    }

    pub fn run(&self, args: &[&str]) -> Ran {
        Ran::of(&self.command(args).output().expect("the program starts"))
    }

    pub fn run_with(&self, args: &[&str], input: &str) -> Ran {
        let mut child =
            self.command(args).stdin(Stdio::piped()).stdout(Stdio::piped()).stderr(Stdio::piped()).spawn().expect("the program starts");
        let mut stdin = child.stdin.take().expect("an input");
        let input = input.to_owned();
        let writing = std::thread::spawn(move || stdin.write_all(input.as_bytes()));
        let ran = Ran::of(&child.wait_with_output().expect("the program ends"));
        // A program that refuses early does not read to the end.
        let _ = writing.join().expect("written");
        ran
    }

    /// Every file of a folder, to tell whether anything in it was changed.
    pub fn bytes_in(&self, folder: &str) -> BTreeMap<OsString, Vec<u8>> {
        let entries = std::fs::read_dir(self.path().join(folder)).expect("a folder").map(|entry| entry.expect("an entry"));
        entries.map(|entry| (entry.file_name(), std::fs::read(entry.path()).expect("readable"))).collect()
    }

    pub fn file(&self, name: &str, text: &str) -> String {
        let path = self.path().join(name);
        std::fs::write(&path, text).expect("written");
        path.display().to_string()
    }
}

/// What a run left.
#[derive(Debug)]
pub struct Ran {
    pub status: Option<i32>,
    pub out: String,
    pub err: String,
}

impl Ran {
    pub fn of(output: &Output) -> Self {
        let text = |bytes: &[u8]| String::from_utf8(bytes.to_vec()).expect("text");
        Self { status: output.status.code(), out: text(&output.stdout), err: text(&output.stderr) }
    }

    #[track_caller]
    pub fn is(&self, status: i32) -> &Self {
        assert_eq!(self.status, Some(status), "{self:#?}");
        self
    }

    #[track_caller]
    pub fn complains(&self, text: &str) -> &Self {
        assert!(self.err.contains(text), "standard error does not say {text:?}: {self:#?}");
        assert!(!self.err.contains("panicked"), "{self:#?}");
        self
    }

    #[track_caller]
    pub fn prints(&self, text: &str) -> &Self {
        assert!(self.out.contains(text), "standard output does not say {text:?}: {self:#?}");
        self
    }
}

/// A server that is ended with the test.
pub struct Serving(pub Child);

impl Drop for Serving {
    fn drop(&mut self) {
        let _ = self.0.kill();
        let _ = self.0.wait();
    }
}
