//! A drawing read back, and what must be true of every one.

use proptest::prelude::*;
use roxmltree::{Document, Node};

pub(crate) fn number(node: &Node<'_, '_>, name: &str) -> f64 {
    node.attribute(name).unwrap().parse().unwrap()
}

/// All coordinates of an element, as pairs.
pub(crate) fn coordinates(node: &Node<'_, '_>) -> Vec<[f64; 2]> {
    let pairs = |text: &str| -> Vec<[f64; 2]> {
        let numbers: Vec<f64> =
            text.split([' ', ',', 'M', 'L']).filter(|s| !s.is_empty()).map(|s| s.parse().unwrap()).collect();
        assert_eq!(numbers.len() % 2, 0);
        numbers.chunks(2).map(|pair| [pair[0], pair[1]]).collect()
    };
    match node.tag_name().name() {
        "path" => pairs(node.attribute("d").unwrap()),
        "polygon" => pairs(node.attribute("points").unwrap()),
        "circle" => vec![[number(node, "cx"), number(node, "cy")]],
        "text" => vec![[number(node, "x"), number(node, "y")]],
        "rect" if node.attribute("x").is_some() => {
            let [x, y] = [number(node, "x"), number(node, "y")];
            vec![[x, y], [x + number(node, "width"), y + number(node, "height")]]
        }
        "svg" | "title" | "rect" => Vec::new(),
        other => unreachable!("{other}"),
    }
}

/// Reads a drawing and holds it to what must be true of every one. Returns how many coordinates it had.
pub(crate) fn hold(drawing: &str, views: usize, obstacles: usize) -> Result<usize, TestCaseError> {
    let document = Document::parse(drawing).map_err(|error| TestCaseError::fail(error.to_string()))?;
    let root = document.root_element();
    prop_assert_eq!(root.tag_name().namespace(), Some("http://www.w3.org/2000/svg"));
    // A4 upright: ISO 216 (from memory).
    for (name, value) in [("viewBox", "0 0 210 297"), ("width", "210mm"), ("height", "297mm")] {
        prop_assert_eq!(root.attribute(name), Some(value));
    }
    let mut seen = 0;
    for node in root.descendants().filter(Node::is_element) {
        for [x, y] in coordinates(&node) {
            let inside = (MARGIN..=210.0 - MARGIN).contains(&x) && (MARGIN..=297.0 - MARGIN).contains(&y);
            prop_assert!(inside, "{x} {y} of {:?}", &drawing[node.range()]);
            for value in [x, y] {
                prop_assert!((value * 100.0 - (value * 100.0).round()).abs() < 1e-6, "{value}");
            }
            seen += 1;
        }
    }
    let texts = texts(&document);
    let told = missing(&texts);
    for number in 1..=obstacles {
        let count = called(&texts, number) + usize::from(is_listed(&told, number));
        prop_assert!(count >= views, "{number}: {count}, {told}");
    }
    for (i, a) in texts.iter().enumerate() {
        prop_assert!(a.size >= LEAST_SIZE, "{a:?}");
        prop_assert!(!a.text.contains("  "), "{a:?}");
        for j in 0..2 {
            prop_assert!(a.least[j] >= MARGIN && a.most[j] <= [210.0, 297.0][j] - MARGIN, "{a:?}");
        }
        for b in &texts[i + 1..] {
            let apart = (0..2).any(|j| a.most[j] <= b.least[j] || b.most[j] <= a.least[j]);
            prop_assert!(apart, "{a:?} {b:?}");
        }
    }
    for leader in elements(&root, "path").map(|node| coordinates(&node)) {
        let is_leader = (2..=3).contains(&leader.len()) && [53.8, 156.2].contains(&leader[0][0]);
        for (pair, text) in leader.windows(2).flat_map(|pair| texts.iter().map(move |text| (pair, text))) {
            prop_assert!(!(is_leader && text.is_crossed_by(pair[0], pair[1])), "{leader:?} {text:?}");
        }
    }
    Ok(seen)
}

/// What a printer leaves white on every side, and the least size of letters, whose capitals are then 2.5 mm high: common
/// practice, no source.
pub(crate) const MARGIN: f64 = 10.0;
pub(crate) const LEAST_SIZE: f64 = 3.5;

pub(crate) fn elements<'a>(root: &Node<'a, 'a>, name: &'static str) -> impl Iterator<Item = Node<'a, 'a>> {
    root.descendants().filter(move |node| node.is_element() && node.tag_name().name() == name)
}

/// How often a number is called out beside the views.
pub(crate) fn called(texts: &[Lettering<'_>], number: usize) -> usize {
    let number = number.to_string();
    let is_called = |text: &&Lettering<'_>| {
        is_column(text.at[0]) && !text.is_centred && text.text.split(' ').next() == Some(&number)
    };
    texts.iter().filter(is_called).count()
}

/// What a drawing says is not in the plane of its section.
pub(crate) fn missing(texts: &[Lettering<'_>]) -> String {
    let said = |text: &Lettering<'_>| text.text.starts_with("Not in this plane, see the plan: ");
    let Some(first) = texts.iter().position(said) else { return String::new() };
    let lines = texts[first..].windows(2).take_while(|pair| {
        let [above, below] = [pair[0].at, pair[1].at];
        above[0] == below[0] && below[1] - above[1] < 4.5
    });
    let rest: String = lines.map(|pair| format!(" {}", pair[1].text)).collect();
    texts[first].text.to_owned() + &rest
}

pub(crate) fn is_listed(told: &str, number: usize) -> bool {
    let told = told.split_once(": ").map_or("", |(_, told)| told);
    format!(" {told},").contains(&format!(" {number} "))
        || format!(" {told},").contains(&format!(" {number},"))
}

/// All texts of a drawing, in order.
pub(crate) fn texts<'a>(document: &'a Document<'a>) -> Vec<Lettering<'a>> {
    elements(&document.root_element(), "text").map(|node| Lettering::of(&node)).collect()
}

/// A text and the box of its capitals.
#[derive(Debug)]
pub(crate) struct Lettering<'a> {
    pub(crate) text: &'a str,
    pub(crate) at: [f64; 2],
    size: f64,
    is_centred: bool,
    least: [f64; 2],
    most: [f64; 2],
}

impl<'a> Lettering<'a> {
    fn of(node: &Node<'a, 'a>) -> Self {
        let (x, y, size) = (number(node, "x"), number(node, "y"), number(node, "font-size"));
        let text = node.text().unwrap_or("");
        let long = width(text) * size;
        let anchor = node.attribute("text-anchor").unwrap();
        let from = match anchor {
            "start" => 0.0,
            "middle" => -0.5 * long,
            "end" => -long,
            other => unreachable!("{other}"),
        };
        let (least, most) = ([x + from, y - 0.7 * size], [x + from + long, y]);
        assert_eq!(node.attribute("transform"), None, "texts are level");
        Self { text, at: [x, y], size, is_centred: anchor == "middle", least, most }
    }

    /// Whether a straight piece passes through the box.
    fn is_crossed_by(&self, from: [f64; 2], to: [f64; 2]) -> bool {
        let (mut enters, mut leaves) = (0.0_f64, 1.0_f64);
        for i in 0..2 {
            let way = to[i] - from[i];
            if way == 0.0 {
                if from[i] < self.least[i] || from[i] > self.most[i] {
                    return false;
                }
                continue;
            }
            let [a, b] = [(self.least[i] - from[i]) / way, (self.most[i] - from[i]) / way];
            enters = enters.max(a.min(b));
            leaves = leaves.min(a.max(b));
        }
        enters < leaves
    }
}

/// How wide a text is at size one in a common sans-serif letter: its published widths, from memory; what is not in them
/// half as wide as high.
pub(crate) fn width(text: &str) -> f64 {
    let wide = |c: char| match c {
        'i' | 'j' | 'l' | '\'' => 0.222,
        ' ' | '.' | ',' | ':' | ';' | 'f' | 't' | 'I' | '!' | '/' | '[' | ']' => 0.278,
        'r' | '(' | ')' | '-' => 0.333,
        'm' | 'M' => 0.833,
        'w' | 'C' | 'D' | 'H' | 'N' | 'R' | 'U' => 0.722,
        'A' | 'B' | 'E' | 'K' | 'P' | 'S' | 'V' | 'X' | 'Y' => 0.667,
        'G' | 'O' | 'Q' | 'Ø' => 0.778,
        '+' | '−' | '=' => 0.584,
        '0'..='9' | 'a' | 'b' | 'd' | 'e' | 'g' | 'h' | 'n' | 'o' | 'p' | 'q' | 'u' => 0.556,
        _ => 0.5,
    };
    text.chars().map(wide).sum()
}

pub(crate) fn is_column(x: f64) -> bool {
    x == 53.0 || x == 157.0
}
