//! The Falsewright page.

fn main() {
    leptos::mount::mount_to_body(|| "Falsewright");
}
