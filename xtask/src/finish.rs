//! The last touch on a bundled site: its styles in one file, its content policy and its service worker.

use anyhow::{Context, Result, bail};
use base64::Engine;
use base64::prelude::BASE64_STANDARD;
use sha2::{Digest, Sha256};
use std::fs;
use std::path::Path;

/// Only the site itself may be loaded from or spoken to. Style attributes are allowed since the drawing sets them.
const POLICY: &str = "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'{scripts}; style-src 'self'; \
                      style-src-attr 'unsafe-inline'; img-src 'self' data: blob:; font-src 'self'; connect-src 'self'; \
                      manifest-src 'self'; worker-src 'self'; base-uri 'none'; form-action 'none'";
const POLICY_PLACE: &str = "http-equiv=\"Content-Security-Policy\" content=\"\"";

/// As the bundler links a style.
const STYLE: &str = "<link rel=\"stylesheet\" href=\"./";

/// Joins the styles, writes the policy into `index.html` and `sw.js` beside it.
pub fn finish(site: &Path, worker: &str) -> Result<()> {
    let page = site.join("index.html");
    let html = fs::read_to_string(&page).context("the bundle has no index.html")?;
    let html = with_one_style(&html, site)?;
    fs::write(&page, with_policy(&html)?)?;

    let mut list = Vec::new();
    for file in files(site)?.into_iter().filter(|file| file != "sw.js") {
        list.push((digest(&fs::read(site.join(&file))?), file));
    }
    fs::write(site.join("sw.js"), service_worker(worker, &list))?;
    Ok(())
}

/// All files under a folder, relative to it with `/` between names, in order.
pub fn files(folder: &Path) -> Result<Vec<String>> {
    fn walk(folder: &Path, prefix: &str, found: &mut Vec<String>) -> Result<()> {
        for entry in fs::read_dir(folder).with_context(|| format!("cannot read {}", folder.display()))? {
            let entry = entry?;
            let name = format!("{prefix}{}", entry.file_name().to_string_lossy());
            if entry.file_type()?.is_dir() {
                walk(&entry.path(), &format!("{name}/"), found)?;
            } else {
                found.push(name);
            }
        }
        Ok(())
    }
    let mut found = Vec::new();
    walk(folder, "", &mut found)?;
    found.sort();
    Ok(found)
}

/// All styles, in the order of their links, in one file where the first one was: a page asks for fewer files so.
fn with_one_style(html: &str, site: &Path) -> Result<String> {
    let mut parts = html.split(STYLE);
    let mut page = parts.next().unwrap_or_default().to_owned();
    let (place, mut styles) = (page.len(), String::new());
    for part in parts {
        let linked = part.split_once('"').and_then(|(file, rest)| Some((file, rest.split_once('>')?.1)));
        let (file, rest) = linked.context("index.html links a style in a way that is not known")?;
        let file = site.join(file);
        styles.push_str(&fs::read_to_string(&file).with_context(|| format!("cannot read {}", file.display()))?);
        fs::remove_file(&file)?;
        page.push_str(rest);
    }
    let name = format!("style-{}.css", hex(&Sha256::digest(&styles)[..8]));
    fs::write(site.join(&name), styles)?;
    page.insert_str(place, &format!("{STYLE}{name}\">"));
    Ok(page)
}

fn hex(bytes: &[u8]) -> String {
    bytes.iter().map(|byte| format!("{byte:02x}")).collect()
}

/// The inline scripts that the bundler wrote are allowed by their digests, and no others.
fn with_policy(html: &str) -> Result<String> {
    if html.matches(POLICY_PLACE).count() != 1 {
        bail!("static/index.html must hold exactly one <meta {POLICY_PLACE}>");
    }
    let scripts: String = inline_scripts(html).iter().map(|text| format!(" '{}'", digest(text.as_bytes()))).collect();
    let policy = POLICY.replace("{scripts}", &scripts);
    Ok(html.replace(POLICY_PLACE, &format!("http-equiv=\"Content-Security-Policy\" content=\"{policy}\"")))
}

fn inline_scripts(html: &str) -> Vec<&str> {
    let mut found = Vec::new();
    let mut rest = html;
    while let Some(start) = rest.find("<script") {
        let Some((attributes, body)) = rest[start..].split_once('>') else { break };
        let Some((text, after)) = body.split_once("</script>") else { break };
        if !attributes.contains(" src=") {
            found.push(text);
        }
        rest = after;
    }
    found
}

fn service_worker(template: &str, list: &[(String, String)]) -> String {
    let mut all = Sha256::new();
    let mut lines = String::new();
    for (digest, file) in list {
        all.update(format!("{digest} {file}\n"));
        lines.push_str(&format!("  [{file:?}, {digest:?}],\n"));
    }
    let version = hex(&all.finalize()[..8]);
    template.replace("\"VERSION\"", &format!("{version:?}")).replace("[/* FILES */]", &format!("[\n{lines}]"))
}

/// As browsers write it in policies and integrity values.
fn digest(bytes: &[u8]) -> String {
    format!("sha256-{}", BASE64_STANDARD.encode(Sha256::digest(bytes)))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn digests_are_written_as_browsers_expect() {
        // SHA-256 of "abc": FIPS 180-2, appendix B.1.
        assert_eq!(digest(b"abc"), "sha256-ungWv48Bz+pBQUDeXa4iI7ADYaOWF3qctBD/YfIAFa0=");
    }

    #[test]
    fn only_inline_scripts_enter_the_policy() {
        let html = "<meta http-equiv=\"Content-Security-Policy\" content=\"\">\
                    <script src=\"a.js\"></script><script type=\"module\">abc</script>";
        let page = with_policy(html).unwrap();
        assert!(page.contains("'wasm-unsafe-eval' 'sha256-ungWv48Bz+pBQUDeXa4iI7ADYaOWF3qctBD/YfIAFa0=';"), "{page}");
        assert_eq!(page.matches("'sha256-").count(), 1);
        assert!(with_policy("<script>abc</script>").is_err());
    }

    #[test]
    fn styles_become_one_in_their_order() {
        let site = std::env::temp_dir().join(format!("falsewright-styles-{}", std::process::id()));
        fs::create_dir_all(&site).unwrap();
        fs::write(site.join("b.css"), "p{color:red}").unwrap();
        fs::write(site.join("a.css"), "p{color:blue}").unwrap();
        let html = "<a><link rel=\"stylesheet\" href=\"./b.css\"/><b><link rel=\"stylesheet\" href=\"./a.css\"/><c>";
        let page = with_one_style(html, &site).unwrap();
        let left = files(&site).unwrap();
        assert_eq!(page, format!("<a><link rel=\"stylesheet\" href=\"./{}\"><b><c>", left.join(" ")));
        assert_eq!(fs::read_to_string(site.join(&left[0])).unwrap(), "p{color:red}p{color:blue}");
        fs::remove_dir_all(site).unwrap();
    }

    #[test]
    fn the_version_follows_every_file() {
        let template = "const VERSION = \"VERSION\";\nconst FILES = [/* FILES */];";
        let worker = |digest: &str| service_worker(template, &[(digest.into(), "index.html".into())]);
        assert!(worker("one").contains("[\"index.html\", \"one\"]"));
        let version = |text: String| text.lines().next().map(str::to_owned);
        assert_ne!(version(worker("one")), version(worker("two")));
        assert_eq!(worker("one"), worker("one"));
    }
}
