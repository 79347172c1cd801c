//! The programs that the build needs. What is missing goes into a folder of its own in the user's cache; nothing that
//! the user has installed is replaced.

use crate::process::{cargo, command, output, root, run};
use anyhow::{Context, Result, bail};
use std::env;
use std::fs;
use std::path::{Path, PathBuf};

/// The page's target.
pub const WASM: &str = "wasm32-unknown-unknown";

const TRUNK: &str = "0.21.14";
const BINARYEN: &str = "132.0.0";

/// Adds the page's target to the toolchain.
pub fn wasm_target() -> Result<()> {
    let mut query = command("rustc", &["--print", "target-libdir", "--target", WASM]);
    if output(&mut query).is_some_and(|dir| Path::new(&dir).is_dir()) {
        return Ok(());
    }
    run("adding the WebAssembly target to Rust (seconds)", &mut command("rustup", &["target", "add", WASM]))
        .context("without rustup, install the wasm32-unknown-unknown standard library of this Rust by hand")
}

/// Trunk, which bundles the page.
pub fn trunk() -> Result<PathBuf> {
    installed("trunk", "trunk", TRUNK, "about 3 minutes", &["--locked", "--no-default-features"])
}

/// The binding generator and the wasm test runner, in the version that Cargo.lock names.
pub fn wasm_bindgen(program: &str) -> Result<PathBuf> {
    installed("wasm-bindgen-cli", program, &locked_version("wasm-bindgen")?, "about 2 minutes", &[])
}

/// The wasm optimiser; nothing where Node.js cannot be had.
pub fn wasm_opt() -> Option<PathBuf> {
    let folder = home("binaryen", BINARYEN).ok()?;
    let program = folder.join("node_modules/.bin/wasm-opt");
    if program.is_file() && node().is_ok() {
        return Some(program);
    }
    let install = || -> Result<()> {
        node()?;
        fs::create_dir_all(&folder)?;
        let package = format!("binaryen@{BINARYEN}");
        let mut npm = command("npm", &["install", "--no-audit", "--no-fund", "--no-save", "--prefix"]);
        run("installing the wasm optimiser (under a minute)", npm.arg(&folder).arg(package))
    };
    match install() {
        Ok(()) => Some(program),
        Err(error) => {
            eprintln!("note: no wasm optimiser ({error:#}); the page works, but is larger");
            None
        }
    }
}

/// Node.js with npm, from Debian's packages where it is missing.
pub fn node() -> Result<()> {
    let present = || on_path("node").is_some() && on_path("npm").is_some();
    if !present() {
        debian("Node.js", &["nodejs", "npm"])?;
    }
    if present() { Ok(()) } else { bail!("install Node.js 18 or later, with npm") }
}

/// A Chromium, from Debian's packages where it is missing.
pub fn chromium() -> Result<PathBuf> {
    let find = || ["chromium", "chromium-browser", "google-chrome"].iter().find_map(|name| on_path(name));
    if let Some(program) = find() {
        return Ok(program);
    }
    debian("Chromium", &["chromium"])?;
    find().context("install Chromium so that `chromium` is on the PATH")
}

fn installed(package: &str, program: &str, version: &str, duration: &str, options: &[&str]) -> Result<PathBuf> {
    let is_it = |path: &Path| output(command(path, &[]).arg("--version")).is_some_and(|text| says(&text, version));
    if let Some(path) = on_path(program).filter(|path| is_it(path)) {
        return Ok(path);
    }
    let folder = home(package, version)?;
    let path = folder.join("bin").join(program);
    if path.is_file() && is_it(&path) {
        return Ok(path);
    }
    // Speed of building matters more here than speed of running.
    let mut install = cargo(&["install", package, "--version", version, "--force"]);
    install.args(options).arg("--root").arg(&folder);
    install.env("CARGO_PROFILE_RELEASE_OPT_LEVEL", "0");
    install.env("CARGO_PROFILE_RELEASE_LTO", "false");
    install.env("CARGO_PROFILE_RELEASE_CODEGEN_UNITS", "16");
    install.env_remove("CARGO_TARGET_DIR");
    run(&format!("installing {package} {version} into {} ({duration}, once)", folder.display()), &mut install)?;
    Ok(path)
}

/// Whether a version text such as `trunk 0.21.14` names exactly this version.
fn says(text: &str, version: &str) -> bool {
    text.split_whitespace().any(|word| word == version)
}

fn debian(what: &str, packages: &[&str]) -> Result<()> {
    let by_hand = format!("{what} is missing; as root: apt-get install {}", packages.join(" "));
    let is_root = output(&mut command("id", &["-u"])).as_deref() == Some("0");
    if !is_root || on_path("apt-get").is_none() {
        bail!(by_hand);
    }
    let quietly = [("DEBIAN_FRONTEND", "noninteractive")];
    run("reading Debian's package lists (seconds)", command("apt-get", &["update", "-qq"]).envs(quietly))?;
    let mut install = command("apt-get", &["install", "-y", "-qq", "--no-install-recommends"]);
    run(&format!("installing {what} from Debian's packages (about a minute)"), install.args(packages).envs(quietly))
        .context(by_hand)
}

fn home(tool: &str, version: &str) -> Result<PathBuf> {
    let cache = match env::var_os("XDG_CACHE_HOME").filter(|dir| !dir.is_empty()) {
        Some(dir) => PathBuf::from(dir),
        None => PathBuf::from(env::var_os("HOME").context("HOME is not set")?).join(".cache"),
    };
    Ok(cache.join("falsewright-tools").join(format!("{tool}-{version}")))
}

fn on_path(program: &str) -> Option<PathBuf> {
    let path = env::var_os("PATH")?;
    env::split_paths(&path).map(|folder| folder.join(program)).find(|file| file.is_file())
}

fn locked_version(package: &str) -> Result<String> {
    let lock = fs::read_to_string(root().join("Cargo.lock")).context("cannot read Cargo.lock")?;
    version_in(&lock, package).with_context(|| format!("Cargo.lock does not name {package}"))
}

fn version_in(lock: &str, package: &str) -> Option<String> {
    let quoted = |line: &str, key: &str| Some(line.strip_prefix(key)?.trim_matches('"').to_owned());
    let mut lines = lock.lines();
    lines.find(|line| quoted(line, "name = ").as_deref() == Some(package))?;
    lines.next().and_then(|line| quoted(line, "version = "))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_lock_file_names_versions_by_whole_names() {
        let lock = "[[package]]\nname = \"wasm-bindgen-futures\"\nversion = \"0.4.80\"\n\n\
                    [[package]]\nname = \"wasm-bindgen\"\nversion = \"0.2.130\"\n";
        assert_eq!(version_in(lock, "wasm-bindgen").as_deref(), Some("0.2.130"));
        assert_eq!(version_in(lock, "wasm"), None);
    }

    #[test]
    fn a_version_is_taken_only_if_it_is_the_very_same() {
        assert!(says("wasm-bindgen 0.2.130", "0.2.130"));
        assert!(says("wasm-bindgen 0.2.130 (0a1b2c3)", "0.2.130"));
        assert!(!says("wasm-bindgen 0.2.13", "0.2.130"));
        assert!(!says("wasm-bindgen 0.2.1301", "0.2.130"));
    }
}
