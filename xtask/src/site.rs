//! The static site in `dist/`.

use crate::process::{command, root, run, target_dir, with_path};
use crate::{finish, tools};
use anyhow::{Context, Result};
use std::fs;
use std::path::{Path, PathBuf};
use std::time::SystemTime;

/// What the site is made of.
const SOURCES: [&str; 7] = ["Cargo.lock", "Cargo.toml", "Trunk.toml", "app", "core", "static", "xtask"];

/// For size, with no more features than Rust's own output uses: all browsers of the last years have them.
const OPTIMISE: [&str; 9] = [
    "-Oz",
    // Browsers translate a function when it is first called, as a whole; long ones of many parts pack worse as well.
    "--one-caller-inline-max-function-size=40",
    // By how often they are called: short numbers for most calls, which also pack better.
    "--reorder-functions",
    "--enable-bulk-memory",
    "--enable-multivalue",
    "--enable-mutable-globals",
    "--enable-nontrapping-float-to-int",
    "--enable-reference-types",
    "--enable-sign-ext",
];

/// The folder that holds the finished site.
pub fn dist() -> PathBuf {
    root().join("dist")
}

/// Builds the site if any source is newer than it, and says where it is.
pub fn build() -> Result<()> {
    if is_current()? {
        eprintln!("==> the page in dist/ is up to date");
    } else {
        make()?;
    }
    Ok(())
}

fn make() -> Result<()> {
    let start = SystemTime::now();
    tools::wasm_target()?;
    let trunk = tools::trunk()?;
    let bindgen = tools::wasm_bindgen("wasm-bindgen")?;
    let wasm_opt = tools::wasm_opt();

    let staging = target_dir().join("site");
    remove(&staging)?;
    let mut bundle = command(trunk, &["build", "--release", "--cargo-profile", "page", "--offline", "--dist"]);
    bundle.arg(&staging).env_remove("NO_COLOR");
    with_path(&mut bundle, &bindgen.parent().map(Path::to_path_buf).into_iter().collect::<Vec<_>>())?;
    run("building the page (4 minutes the first time, then one or two)", &mut bundle)?;

    if let Some(wasm_opt) = wasm_opt {
        for wasm in finish::files(&staging)?.iter().filter(|file| file.ends_with(".wasm")) {
            let file = staging.join(wasm);
            let mut optimise = command(&wasm_opt, &OPTIMISE);
            run("optimising the page (seconds)", optimise.arg("-o").arg(&file).arg(&file))?;
        }
    }
    finish::finish(&staging, &fs::read_to_string(root().join("static/sw.template.js"))?)?;

    let dist = dist();
    remove(&dist)?;
    copy(&staging, &dist)?;
    fs::File::options().write(true).open(dist.join("sw.js"))?.set_modified(start)?;
    let (count, bytes) = size(&dist)?;
    eprintln!("==> {count} files, {:.0} kB in {}", bytes as f64 / 1000.0, dist.display());
    Ok(())
}

/// `sw.js` is written last and bears the time when its build began.
fn is_current() -> Result<bool> {
    let Ok(built) = fs::metadata(dist().join("sw.js")).and_then(|data| data.modified()) else { return Ok(false) };
    for source in SOURCES {
        if newest(&root().join(source))? > built {
            return Ok(false);
        }
    }
    Ok(true)
}

/// When anything in a tree last changed; folders count, since they change when a file is removed.
fn newest(path: &Path) -> Result<SystemTime> {
    let data = fs::metadata(path).with_context(|| format!("cannot read {}", path.display()))?;
    let mut time = data.modified()?;
    if data.is_dir() {
        for entry in fs::read_dir(path)? {
            time = time.max(newest(&entry?.path())?);
        }
    }
    Ok(time)
}

fn remove(folder: &Path) -> Result<()> {
    if folder.exists() {
        fs::remove_dir_all(folder).with_context(|| format!("cannot remove {}", folder.display()))?;
    }
    Ok(())
}

fn copy(from: &Path, to: &Path) -> Result<()> {
    let mut files = finish::files(from)?;
    files.sort_by_key(|file| file == "sw.js");
    for file in files {
        let target = to.join(&file);
        fs::create_dir_all(target.parent().unwrap_or(to))?;
        fs::copy(from.join(&file), &target).with_context(|| format!("cannot write {}", target.display()))?;
    }
    Ok(())
}

fn size(folder: &Path) -> Result<(usize, u64)> {
    let files = finish::files(folder)?;
    let bytes = files.iter().map(|file| Ok(fs::metadata(folder.join(file))?.len())).sum::<Result<u64>>()?;
    Ok((files.len(), bytes))
}
