//! The committed scenarios.

/// One of them, with the rear setups written out, so that they can be patched by themselves.
pub(crate) fn spelled_out(name: &str) -> serde_json::Value {
    let path = format!("{}/examples/scenarios/{name}.json", env!("CARGO_MANIFEST_DIR"));
    let mut document: serde_json::Value =
        serde_json::from_str(&std::fs::read_to_string(path).unwrap()).unwrap();
    for setups in ["original", "proposed"] {
        if document[setups]["rear"] == "same" {
            document[setups]["rear"] = document[setups]["front"].clone();
        }
    }
    document
}
