//! Running other programs, and saying so.

use anyhow::{Context, Result, bail};
use std::env;
use std::ffi::{OsStr, OsString};
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};
use std::time::Instant;

/// The root of the repository: where cargo runs this program from, even if it was built elsewhere.
pub fn root() -> PathBuf {
    let package = env::var_os("CARGO_MANIFEST_DIR").unwrap_or(env!("CARGO_MANIFEST_DIR").into());
    Path::new(&package).parent().unwrap_or(Path::new(".")).to_path_buf()
}

/// Where cargo puts what it builds.
pub fn target_dir() -> PathBuf {
    match env::var_os("CARGO_TARGET_DIR") {
        Some(dir) => root().join(dir),
        None => root().join("target"),
    }
}

/// A command that runs in the root of the repository.
pub fn command(program: impl AsRef<OsStr>, arguments: &[&str]) -> Command {
    let mut command = Command::new(program);
    command.args(arguments).current_dir(root());
    command
}

/// The cargo that runs this program.
pub fn cargo(arguments: &[&str]) -> Command {
    command(env::var_os("CARGO").unwrap_or("cargo".into()), arguments)
}

/// Puts folders in front of a command's search path.
pub fn with_path(command: &mut Command, folders: &[PathBuf]) -> Result<()> {
    let rest = env::var_os("PATH").unwrap_or_default();
    let path: OsString = env::join_paths(folders.iter().cloned().chain(env::split_paths(&rest)))?;
    command.env("PATH", path);
    Ok(())
}

/// Runs a command to its end, telling what it is for and how long it took.
pub fn run(purpose: &str, command: &mut Command) -> Result<()> {
    eprintln!("==> {purpose}");
    let start = Instant::now();
    let status = command.status().with_context(|| format!("cannot start {}", name(command)))?;
    if !status.success() {
        bail!("{purpose}: {} ended with {status}", name(command));
    }
    eprintln!("    done in {:.1} s", start.elapsed().as_secs_f64());
    Ok(())
}

/// What a command prints, or nothing where it is missing or fails.
pub fn output(command: &mut Command) -> Option<String> {
    let output = command.stdin(Stdio::null()).stderr(Stdio::null()).output().ok()?;
    output.status.success().then(|| String::from_utf8_lossy(&output.stdout).trim().to_owned())
}

fn name(command: &Command) -> String {
    command.get_program().to_string_lossy().into_owned()
}
