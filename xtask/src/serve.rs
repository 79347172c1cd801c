//! A small static server for this machine only.

use crate::site;
use anyhow::{Context, Result, anyhow};
use std::fs::File;
use std::path::{Component, Path, PathBuf};
use tiny_http::{Header, Method, Request, Response, Server};

const PORT: u16 = 8722;

/// Builds the page where it is out of date and serves it until interrupted.
pub fn run(port: Option<&str>) -> Result<bool> {
    let ports = match port {
        Some(text) => {
            let port = text.parse::<u16>().with_context(|| format!("{text:?} is not a port, 1 to 65535"))?;
            port..=port
        }
        None => PORT..=PORT + 20,
    };
    site::build()?;
    let (server, port) = listen(ports)?;
    println!("Falsewright is at http://127.0.0.1:{port}/  (Ctrl+C ends it)");
    for request in server.incoming_requests() {
        if let Err(error) = answer(request, &site::dist()) {
            eprintln!("note: {error:#}");
        }
    }
    Ok(true)
}

fn listen(mut ports: std::ops::RangeInclusive<u16>) -> Result<(Server, u16)> {
    let named = ports.clone();
    ports
        .find_map(|port| Server::http(("127.0.0.1", port)).ok().map(|server| (server, port)))
        .with_context(|| format!("no free port in {named:?}; name another: cargo xtask serve PORT"))
}

fn answer(request: Request, folder: &Path) -> Result<()> {
    if !matches!(request.method(), Method::Get | Method::Head) {
        return Ok(request.respond(Response::empty(405))?);
    }
    let Some(path) = file_of(request.url()) else { return Ok(request.respond(Response::empty(404))?) };
    let Ok(file) = File::open(folder.join(&path)) else { return Ok(request.respond(Response::empty(404))?) };
    let mut response = Response::from_file(file);
    response.add_header(header("Content-Type", media_type(&path))?);
    response.add_header(header("Cache-Control", "no-cache")?);
    response.add_header(header("X-Content-Type-Options", "nosniff")?);
    Ok(request.respond(response)?)
}

/// The file that a request names, never outside the folder.
fn file_of(url: &str) -> Option<PathBuf> {
    let path = url.split(['?', '#']).next()?.strip_prefix('/')?;
    let path = if path.is_empty() { "index.html" } else { path };
    let path = PathBuf::from(path);
    path.components().all(|part| matches!(part, Component::Normal(_))).then_some(path)
}

fn media_type(path: &Path) -> &'static str {
    match path.extension().and_then(|text| text.to_str()) {
        Some("html") => "text/html; charset=utf-8",
        Some("js") => "text/javascript; charset=utf-8",
        Some("css") => "text/css; charset=utf-8",
        Some("wasm") => "application/wasm",
        Some("json") => "application/json",
        Some("webmanifest") => "application/manifest+json",
        Some("svg") => "image/svg+xml",
        Some("png") => "image/png",
        Some("woff2") => "font/woff2",
        Some("txt") => "text/plain; charset=utf-8",
        _ => "application/octet-stream",
    }
}

fn header(name: &str, value: &str) -> Result<Header> {
    Header::from_bytes(name, value).map_err(|()| anyhow!("{name}: {value} is no header"))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn requests_stay_inside_the_folder() {
        assert_eq!(file_of("/"), Some("index.html".into()));
        assert_eq!(file_of("/fonts/a.woff2?x=1"), Some("fonts/a.woff2".into()));
        for outside in ["/../Cargo.toml", "//etc/passwd", "/fonts/../../x", "http://other/"] {
            assert_eq!(file_of(outside), None, "{outside}");
        }
    }

    #[test]
    fn wasm_is_served_as_wasm() {
        assert_eq!(media_type(Path::new("app_bg.wasm")), "application/wasm");
    }
}
