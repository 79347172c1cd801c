//! Starts the page.

fn main() {
    falsewright_app::start();
}
