//! The options of the command line.

use beadseat::Excerpt;
use beadseat::rim::RimDiameter;
use beadseat::search::{Keep, Wishes};
use beadseat::tire::Tire;
use beadseat::units::{mm, percent};
use beadseat::wheel::Wheel;

pub(crate) const USAGE: &str = "usage: search SCENARIO.json [--json|--csv] [--top N] [--why CANDIDATE] [--from LIST.csv] [--map FILE.svg] [wishes]\n       \
     search --help says more";

pub(crate) const HELP: &str = "\
search SCENARIO.json [options]

Finds every tire and rim that can stand on the vehicle of a scenario in place of its original setup: for each the
interval of inset in which nothing is beyond its limit, the best whole millimetre in it, what it must be bought with, and
what was not judged. The proposed setup of the scenario is not looked at, nor are its spare wheel and the axles beside
front and rear: where there are some, the answer says so.

  --json              one JSON object a line
  --csv               one line an axle of each candidate
  --top N             only the best N; 10 unless said
  --why CANDIDATE     the findings of one: its rank, or \"225/45R17 on 7.5Jx17 ET42\"
  --from LIST.csv     judges each tire of a list on each wheel of it instead; its first line names the columns: tire,
                      wheel, key, wheel_rating_kg, pressure_kpa, pressure_full_load_kpa, seat. One line a pair that can
                      be mounted, one a cell that cannot be read, one a tire or wheel that goes with no other; JSON
                      lines, or --csv. With --top N the best pairs only: by verdict, then by how many findings are
                      beyond, marginal or vital and not made, and not made
  --map FILE.svg      draws where the tire of the best may stand: width of the rim against inset, for its rim
                      diameter (with --rim that one), what ends each interval, the original and the best

Ctrl-C ends a run with what it has, and says where.

wishes
  --keep wheels|tires what stays on the vehicle
  --staggered         tires that differ from axle to axle, the wider one in the rear
  --spacers           spacers behind wheels that stay
  --rim CODE          one rim diameter only
  --width MM          least nominal width of the tire
  --diameter PERCENT  overall diameter within so much of the original's
  --flush MM          outer face at most so far inside the guard (or the gap outboard)
  --scrub             the scrub radius keeps its sign
  --winter            snow tires

The sizes are those that the designation's grammar allows, whether anybody makes them or not. First come those of
which tires can be expected to bear what is asked of them, then those of lists, then those on approved rims, then those
that leave more. Extra load and load ranges are tried where standard load does not suffice. The text has N sizes, each on
its best rim. Near misses follow, each with the one change that costs least and would admit it: pressure costs nothing, then
come a ring, a spacer, longer fasteners, another tire or wheel, and last what is cut from the body. As JSON they stand in
the first line, with what to measure next. Where the original's tires differ from axle to axle, so do those that are
looked for; the best 40 of each axle are paired, and neither near misses nor a map are given.

examples
  search examples/scenarios/field-survey-wagon.json --top 5
  search examples/scenarios/field-survey-wagon.json --rim 17 --flush 12 --json
  search examples/scenarios/field-survey-wagon.json --why \"225/45R17 on 7.5Jx17 ET42\"
  search examples/scenarios/rangers-pickup.json --keep wheels";

/// How the answer is written.
#[derive(Clone, Copy, PartialEq)]
pub(crate) enum Form {
    Text,
    Json,
    Csv,
}

/// Which setup is to be explained.
pub(crate) enum Wanted {
    Rank(usize),
    Pair(Tire, Wheel),
}

pub(crate) struct Options {
    pub(crate) file: String,
    pub(crate) form: Form,
    /// How many are wanted, if it was said.
    pub(crate) most: Option<usize>,
    pub(crate) why: Option<Wanted>,
    pub(crate) from: Option<String>,
    /// The file that a map is drawn into.
    pub(crate) map: Option<String>,
    pub(crate) wishes: Wishes,
    pub(crate) staggered: bool,
}

impl Options {
    /// How many candidates are shown.
    pub(crate) fn top(&self) -> usize {
        self.most.unwrap_or(10)
    }

    /// The options, or nothing where help is asked for.
    pub(crate) fn read(mut arguments: impl Iterator<Item = String>) -> Result<Option<Self>, String> {
        let mut files = Vec::new();
        let mut options = Self {
            file: String::new(),
            form: Form::Text,
            most: None,
            why: None,
            from: None,
            map: None,
            wishes: Wishes::new(),
            staggered: false,
        };
        while let Some(argument) = arguments.next() {
            let mut value = || arguments.next().ok_or_else(|| format!("{argument} wants a value"));
            let wishes = options.wishes;
            match argument.as_str() {
                "--help" => return Ok(None),
                "--json" => options.form = Form::Json,
                "--csv" => options.form = Form::Csv,
                "--top" => {
                    let text = value()?;
                    let top = text.parse().ok().filter(|top| (1..=100_000).contains(top));
                    options.most = Some(top.ok_or_else(|| bad("--top", &text, "a number from 1 to 100000"))?);
                }
                "--why" => options.why = Some(wanted(&value()?)?),
                "--from" => options.from = Some(value()?),
                "--map" => options.map = Some(value()?),
                "--keep" => {
                    let text = value()?;
                    options.wishes = wishes.with_keep(match text.as_str() {
                        "wheels" => Keep::Wheels,
                        "tires" => Keep::Tires,
                        _ => return Err(bad("--keep", &text, "`wheels` or `tires`")),
                    });
                }
                "--rim" => {
                    let text = value()?;
                    let code = text.parse::<RimDiameter>();
                    options.wishes = wishes
                        .with_rim_diameter(code.map_err(|_| bad("--rim", &text, "a rim diameter code"))?);
                }
                "--width" => {
                    options.wishes = number("--width", &value()?, |v| wishes.with_least_width(mm(v)))?
                }
                "--diameter" => {
                    options.wishes =
                        number("--diameter", &value()?, |v| wishes.with_diameter_within(percent(v)))?;
                }
                "--flush" => {
                    options.wishes = number("--flush", &value()?, |v| wishes.with_flush_within(mm(v)))?
                }
                "--staggered" => options.staggered = true,
                "--scrub" => options.wishes = wishes.with_scrub_kept(true),
                "--spacers" => options.wishes = wishes.with_spacers(true),
                "--winter" => options.wishes = wishes.with_winter(true),
                flag if flag.starts_with("--") => return Err(format!("unknown option {}", Excerpt(flag))),
                _ => files.push(argument),
            }
        }
        let [file] = files.as_slice() else {
            return Err(
                if files.is_empty() { "no scenario given" } else { "more than one scenario given" }.into()
            );
        };
        if options.map.is_some() && (options.from.is_some() || options.why.is_some()) {
            return Err("--map draws what a search finds, and not with --from or --why".into());
        }
        options.file.clone_from(file);
        Ok(Some(options))
    }
}

fn bad(option: &str, text: &str, wanted: &str) -> String {
    format!("{option} {}: {wanted} is wanted", Excerpt(text))
}

fn number(
    option: &str,
    text: &str,
    with: impl Fn(f64) -> Result<Wishes, beadseat::OutOfRange>,
) -> Result<Wishes, String> {
    let number: f64 = text.parse().map_err(|_| bad(option, text, "a number"))?;
    with(number).map_err(|error| format!("{option} {}: {error}", Excerpt(text)))
}

/// `3`, or `225/45R17 on 7.5Jx17 ET42`.
fn wanted(text: &str) -> Result<Wanted, String> {
    if let Ok(rank) = text.parse() {
        return Ok(Wanted::Rank(rank));
    }
    let (tire, wheel) =
        text.split_once(" on ").ok_or_else(|| bad("--why", text, "a rank, or a tire ` on ` a wheel"))?;
    let tire = Tire::parse(tire).map_err(|error| format!("--why: {}", error.show(tire)))?;
    let wheel = Wheel::parse(wheel).map_err(|error| format!("--why: {}", error.show(wheel)))?;
    Ok(Wanted::Pair(tire, wheel))
}
