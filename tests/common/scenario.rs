//! The committed scenarios.
#![allow(dead_code, reason = "each test file uses its part")]

pub(crate) const SHIPPED: [&str; 8] = [
    "field-survey-wagon",
    "field-survey-wagon-at-lock",
    "one-tonne-panel-van",
    "parish-courier-motorcycle",
    "rangers-pickup",
    "regional-truck-on-duals",
    "tandem-boat-trailer",
    "timber-truck-with-tag-axle",
];

/// One of them.
pub(crate) fn shipped(name: &str) -> serde_json::Value {
    let path = format!("{}/examples/scenarios/{name}.json", env!("CARGO_MANIFEST_DIR"));
    serde_json::from_str(&std::fs::read_to_string(path).unwrap()).unwrap()
}

/// One of them, with the rear setups written out, so that they can be patched by themselves.
pub(crate) fn spelled_out(name: &str) -> serde_json::Value {
    let mut document = shipped(name);
    for setups in ["original", "proposed"] {
        if document[setups]["rear"] == "same" {
            document[setups]["rear"] = document[setups]["front"].clone();
        }
    }
    document
}

/// What a document says.
pub(crate) fn read(document: &serde_json::Value) -> beadseat::scenario::Scenario {
    serde_json::from_value(document.clone()).unwrap_or_else(|error| panic!("{error}: {document}"))
}
