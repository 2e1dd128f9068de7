//! Single marks of the sidewall: words, letters and symbols that stand by themselves.

use super::approval::ApprovalMark;
use super::plies::Plies;
use crate::Citation;
use crate::record::words;
use crate::text::ParseErrorKind::Ambiguous;
use crate::text::{Field, ParseError, Scanner, Text, designation, tri};
use crate::tire::{LoadRange, LoadVersion};

words! {
    /// What a mark is about.
    ///
    /// ```
    /// assert_eq!(beadseat::tire::sidewall::MarkTopic::RunFlat.name(), "run_flat");
    /// ```
    MarkTopic {
        /// Grip on snow and ice.
        Winter = "winter",
        /// Certificates of makers and approvals of authorities.
        Approval = "approval",
        /// Whether the tire is a retread.
        Retread = "retread",
        /// How the tire is built.
        Construction = "construction",
        /// How much the tire carries, and at which pressure.
        Load = "load",
        /// Whether the tire runs on without pressure.
        RunFlat = "run_flat",
        /// What the tire may be used for.
        Use = "use",
        /// Which way round it is mounted.
        Mounting = "mounting",
        /// How far the tread is worn.
        Wear = "wear",
        /// Anything that no other topic covers.
        Other = "other",
    }
}

macro_rules! marks {
    ($($variant:ident $topic:ident $citation:ident $canonical:literal [$($spelling:literal)*] $meaning:literal, $choice:literal;)*) => {
        /// A single mark: what it says, what that means for a choice, and where it is defined.
        ///
        /// # Syntax
        /// One mark of the table, in any case; where it has a space, a hyphen or nothing may stand. A
        /// load version or load range by its own grammar, an [`ApprovalMark`], and [`Plies`]. `RF` alone is
        /// refused as ambiguous: it was reinforced once and is run-flat now. `TL` and `TT` are the trade's short forms.
        ///
        /// | mark | also read | means |
        /// |---|---|---|
        $(#[doc = concat!("| `", $canonical, "` | ", $("`", $spelling, "` ",)* "| ", $meaning, " |")])*
        ///
        /// Accepted: `m & s`, `TUBE-TYPE`, `→`, `Reinforced`, `E2 024567 S1WR1`. Refused: `FRETREAD`
        /// (not a mark: look again), `RF`, `4PMSF`.
        ///
        /// ```
        /// use beadseat::tire::sidewall::{MarkTopic, SidewallMark};
        /// let mark: SidewallMark = "m.s".parse()?;
        /// assert_eq!((mark, mark.to_string()), (SidewallMark::MudAndSnow, "M+S".into()));
        /// assert_eq!(mark.topic(), MarkTopic::Winter);
        /// assert!(mark.for_choice().contains("no snow test"));
        /// # Ok::<(), beadseat::ParseError>(())
        /// ```
        #[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
        #[non_exhaustive]
        pub enum SidewallMark {
            $(#[doc = concat!("`", $canonical, "`: ", $meaning, ".")] $variant,)*
            /// The load version: `XL`, `LL` or `HL`.
            LoadVersion(LoadVersion),
            /// The load range or ply rating: `LRE`, `10PR`.
            LoadRange(LoadRange),
            /// A mark of type approval, as `E2 024567 S1WR1`.
            Approval(ApprovalMark),
            /// `TREAD 2 POLYESTER + 2 STEEL`.
            Plies(Plies),
        }

        /// Every spelling with its mark; a space stands for a space, a hyphen or nothing.
        const SPELLINGS: &[(&str, SidewallMark)] =
            &[$(($canonical, SidewallMark::$variant), $(($spelling, SidewallMark::$variant),)*)*];

        impl SidewallMark {
            /// Every mark of the table.
            ///
            /// ```
            /// use beadseat::tire::sidewall::SidewallMark;
            /// assert!(SidewallMark::WORDS.iter().all(|m| m.to_string().parse() == Ok(*m)));
            /// ```
            pub const WORDS: &[Self] = &[$(Self::$variant,)*];

            /// What the mark says of the tire.
            ///
            /// ```
            /// use beadseat::tire::sidewall::SidewallMark;
            /// assert!(SidewallMark::parse("POR")?.meaning().starts_with("professional off-road"));
            /// # Ok::<(), beadseat::ParseError>(())
            /// ```
            pub const fn meaning(&self) -> &'static str {
                match self {
                    $(Self::$variant => $meaning,)*
                    Self::LoadVersion(LoadVersion::Light) => "light load: carries less than standard",
                    Self::LoadVersion(LoadVersion::Extra) => {
                        "extra load: carries more than standard at a higher pressure"
                    }
                    Self::LoadVersion(LoadVersion::High) => {
                        "high load: carries more than extra load at the same pressure"
                    }
                    Self::LoadRange(_) => "load range: a class of strength, not a count of plies",
                    Self::Approval(_) => "type approval by the country of the number",
                    Self::Plies(_) => "actual plies, and what their cords are made of",
                }
            }

            /// What it means for choosing, mounting or using the tire.
            ///
            /// ```
            /// use beadseat::tire::sidewall::SidewallMark;
            /// assert!(SidewallMark::parse("FRT")?.for_choice().contains("trailer"));
            /// # Ok::<(), beadseat::ParseError>(())
            /// ```
            pub const fn for_choice(&self) -> &'static str {
                match self {
                    $(Self::$variant => $choice,)*
                    Self::LoadVersion(LoadVersion::Light) => "check the load index against the original's",
                    Self::LoadVersion(LoadVersion::Extra) => {
                        "never replace it with a standard tire where the placard needs its load"
                    }
                    Self::LoadVersion(LoadVersion::High) => "fit one where the vehicle came with one",
                    Self::LoadRange(_) => {
                        "not below the original's; the pressure that goes with it is molded on the tire"
                    }
                    Self::Plies(_) => "not a ply rating: the load index and load range say what it carries",
                    Self::Approval(_) => {
                        "needed in the countries of the UN agreement; a tire made for the US may have DOT alone"
                    }
                }
            }

            /// What it is about.
            ///
            /// ```
            /// use beadseat::tire::sidewall::{MarkTopic, SidewallMark};
            /// assert_eq!(SidewallMark::parse("XL")?.topic(), MarkTopic::Load);
            /// # Ok::<(), beadseat::ParseError>(())
            /// ```
            pub const fn topic(&self) -> MarkTopic {
                match self {
                    $(Self::$variant => MarkTopic::$topic,)*
                    Self::LoadVersion(_) | Self::LoadRange(_) => MarkTopic::Load,
                    Self::Approval(_) => MarkTopic::Approval,
                    Self::Plies(_) => MarkTopic::Construction,
                }
            }

            /// Where it is defined, or where we read of it.
            ///
            /// ```
            /// use beadseat::tire::sidewall::SidewallMark;
            /// assert!(!SidewallMark::parse("TUBELESS")?.citation().is_from_memory());
            /// assert!(SidewallMark::parse("MPT")?.citation().is_from_memory());
            /// # Ok::<(), beadseat::ParseError>(())
            /// ```
            pub const fn citation(&self) -> Citation {
                match self {
                    $(Self::$variant => Citation::$citation,)*
                    Self::LoadVersion(_) => Citation::LOAD_VERSION_MARK,
                    Self::LoadRange(_) => Citation::LOAD_RANGE_MARK,
                    Self::Approval(_) => Citation::APPROVAL_MARK,
                    Self::Plies(_) => Citation::PLIES,
                }
            }

            /// The place in [`Self::WORDS`].
            pub(super) const fn word(&self) -> Option<u8> {
                enum Word { $($variant,)* }
                match self {
                    $(Self::$variant => Some(Word::$variant as u8),)*
                    Self::LoadVersion(_) | Self::LoadRange(_) | Self::Approval(_) | Self::Plies(_) => None,
                }
            }

            const fn canonical(&self) -> &'static str {
                match self {
                    $(Self::$variant => $canonical,)*
                    Self::LoadVersion(_) | Self::LoadRange(_) | Self::Approval(_) | Self::Plies(_) => "",
                }
            }
        }
    };
}

marks! {
    MudAndSnow Winter MUD_AND_SNOW "M+S" ["M + S" "M & S" "M . S" "M . S ." "M / S" "M S" "MUD AND SNOW" "MUD + SNOW" "MUD & SNOW"]
        "mud and snow: the maker's claim about the tread",
        "no snow test stands behind it; it is not enough where tires for severe snow are asked for";
    SevereSnow Winter SEVERE_SNOW "3PMSF" ["3 PMSF" "SNOWFLAKE" "SNOW FLAKE" "MOUNTAIN SNOWFLAKE" "MOUNTAIN WITH SNOWFLAKE" "3 PEAK MOUNTAIN SNOWFLAKE" "3 PEAK MOUNTAIN WITH SNOWFLAKE" "THREE PEAK MOUNTAIN" "3 PEAK MOUNTAIN" "ALPINE SYMBOL" "THREE PEAK MOUNTAIN SNOWFLAKE" "THREE PEAK MOUNTAIN WITH SNOWFLAKE"]
        "three-peak mountain with snowflake: passed a test of grip on snow",
        "what a severe-snow rule asks for; the test says nothing of ice or of cornering";
    IceGrip Winter ICE_GRIP "ICE GRIP" []
        "ice grip: passed a test of braking on ice, without studs",
        "for cars, and only beside the mountain with snowflake";
    Dot Approval DOT_MARK "DOT" []
        "the maker certifies the US safety standard for the tire",
        "needed in the US, but for tires that no standard covers";
    DotRetread Retread DOT_RETREAD "DOT-R" []
        "the retreader certifies the US standard for retreaded passenger tires",
        "stands beside the DOT of the casing; the date behind it is that of retreading";
    ChinaApproval Approval NATIONAL_APPROVAL "CCC" []
        "approved in China", "access to the market only";
    BrazilApproval Approval NATIONAL_APPROVAL "INMETRO" []
        "approved in Brazil", "access to the market only";
    IndiaApproval Approval NATIONAL_APPROVAL "BIS" ["ISI"]
        "approved in India", "access to the market only";
    IndonesiaApproval Approval NATIONAL_APPROVAL "SNI" []
        "approved in Indonesia", "access to the market only";
    GulfApproval Approval NATIONAL_APPROVAL "GSO" []
        "approved in the Gulf states", "access to the market only";
    Retread Retread RETREAD_MARK "RETREAD" []
        "a worn casing with a new tread",
        "its identification number has seven symbols, and its date is that of retreading";
    Regroovable Wear REGROOVABLE "REGROOVABLE" []
        "the grooves may be cut deeper",
        "only tires so marked may be regrooved; not on the steered wheels of buses";
    Tubeless Construction TUBELESS "TUBELESS" ["TL"]
        "runs without a tube",
        "only on rims for tubeless tires; a tube is no repair";
    TubeType Construction TUBE_TYPE "TUBE TYPE" ["TT"]
        "needs a tube", "fit the tube of its size";
    Radial Construction STRUCTURE_MARK "RADIAL" ["STEEL BELTED RADIAL"]
        "radial plies", "never on one axle with diagonal tires";
    Diagonal Construction STRUCTURE_MARK "DIAGONAL" ["BIAS" "BIAS PLY"]
        "diagonal plies", "never on one axle with radial tires";
    BiasBelted Construction BIAS_BELTED "BIAS BELTED" []
        "diagonal plies under a belt", "out of date; never on one axle with radial tires";
    StandardLoad Load STANDARD_LOAD "SL" ["STANDARD LOAD"]
        "standard load: the same as no mark", "not in place of an extra load tire";
    SpareInflation Load SPARE_INFLATION "INFLATE TO 60 PSI" ["INFLATE TO 420 KPA" "INFLATE TO 420 KPA (60 PSI)"]
        "the pressure of a temporary spare, 420 kPa",
        "inflate the spare to this, not to the placard of the road tires";
    ExtendedMobility RunFlat EXTENDED_MOBILITY "EMT" []
        "extended mobility tire: holds up without pressure, by other rules than RF",
        "not the same as RF: ask its maker how far it runs";
    RunFlat RunFlat RUN_FLAT_WORD "RFT" ["RUN FLAT"]
        "a maker's word for a self-supporting tire",
        "a hint only: the mark is RF in the size";
    FarmImplement Use FARM_IMPLEMENT "FI" ["FARM IMPLEMENT"]
        "farm implement", "some use on roads; outside the US standard for light vehicles";
    NotForHighway Use NOT_FOR_HIGHWAY "NHS" ["NOT FOR HIGHWAY SERVICE" "NOT FOR HIGHWAY USE"]
        "not for highway service", "not on a road vehicle: inspection rejects it";
    ExtraTread Use SPECIAL_USE "ET" ["EXTRA TREAD"]
        "extra tread: a deep tread for special use", "on and off the road";
    ProfessionalOffRoad Use OFF_ROAD "POR" ["PROFESSIONAL OFF ROAD"]
        "professional off-road: made for severe ground first",
        "ask whether a severe-snow rule counts it";
    MultiPurposeTruck Use SPECIAL_USE "MPT" ["MULTI PURPOSE TRUCK"]
        "multi-purpose truck: special use", "on and off the road";
    MiningAndLogging Use SPECIAL_USE "ML" ["MINING AND LOGGING"]
        "mining and logging: special use", "on and off the road";
    FreeRolling Use SPECIAL_USE "FRT" ["FREE ROLLING TIRE" "FREE ROLLING TYRE"]
        "free rolling tire", "on trailer axles only, neither driven nor steered";
    Rotation Mounting ROTATION_MARK "ROTATION" ["DIRECTIONAL" "ROTATION ->" "ROTATION <-" "ROTATION →" "ROTATION ←" "->" "<-" "→" "←"]
        "the arrow points the way the wheel turns going forward",
        "change wheels between front and rear on one side only";
    Outside Mounting OUTSIDE_MARK "OUTSIDE" ["SIDE FACING OUTWARDS" "EXTERN"]
        "asymmetric: this side faces out", "the whole identification number is on this side";
    Inside Mounting INSIDE_MARK "INSIDE" ["SIDE FACING INWARDS"]
        "asymmetric: this side faces in", "if you can read it on the vehicle, the tire is turned";
    TreadWearIndicator Wear WEAR_INDICATOR "TWI" ["TREAD WEAR INDICATOR" "▲" "△"]
        "place of the bars in the grooves that show the legal limit",
        "worn out when the tread is level with them";
    WinterWearIndicator Wear WINTER_WEAR_INDICATOR "WI" ["WINTER TWI" "WINTER WEAR INDICATOR"]
        "place of the bars that show when grip on snow is gone, about 4 mm",
        "optional; not the legal limit";
    FactorySecond Other FACTORY_SECOND "BLEMISHED" ["BLEM" "DA" "NA"]
        "sold as a factory second", "a blemish of looks, so the seller says";
    OriginalEquipment Other ORIGINAL_EQUIPMENT_MARK "★" []
        "made for one vehicle maker", "match all four";
}

impl SidewallMark {
    pub(crate) const fn scan(scanner: &mut Scanner<'_>) -> Result<Self, ParseError> {
        if ApprovalMark::is_at(scanner) {
            return Ok(Self::Approval(tri!(ApprovalMark::scan(scanner))));
        }
        if Plies::is_next(scanner) {
            return Ok(Self::Plies(tri!(Plies::scan(scanner))));
        }
        if let Some(mark) = tri!(Self::scan_word(scanner)) {
            return Ok(mark);
        }
        let mut ahead = *scanner;
        if let Ok(version) = LoadVersion::scan(&mut ahead) {
            *scanner = ahead;
            return Ok(Self::LoadVersion(version));
        }
        let mut ahead = *scanner;
        if let Ok(range) = LoadRange::scan(&mut ahead) {
            *scanner = ahead;
            return Ok(Self::LoadRange(range));
        }
        Err(scanner.missing(Field::SidewallMark))
    }

    /// A mark of the table, if one is here.
    #[inline(never)]
    pub(super) const fn scan_word(scanner: &mut Scanner<'_>) -> Result<Option<Self>, ParseError> {
        // The longest spelling wins: `DOT-R` is not `DOT` with something behind it.
        let mut found = None;
        let mut longest = *scanner;
        let mut i = 0;
        while i < SPELLINGS.len() {
            if let Some(behind) = spelled(*scanner, SPELLINGS[i].0) {
                if behind.at() > longest.at() {
                    longest = behind;
                    found = Some(SPELLINGS[i].1);
                }
            }
            i += 1;
        }
        match spelled(*scanner, "RF") {
            Some(behind) if found.is_none() => {
                return Err(behind.error(Ambiguous, Field::SidewallMark, scanner.at()));
            }
            _ => {}
        }
        *scanner = longest;
        Ok(found)
    }

    pub(crate) fn write(&self, text: &mut Text) {
        match self {
            Self::LoadVersion(version) => version.write(text),
            Self::LoadRange(range) => range.write(text),
            Self::Approval(mark) => mark.write(text),
            Self::Plies(plies) => plies.write(text),
            _ => {
                text.str(self.canonical());
            }
        }
    }

    /// Whether it is the mark that rules for severe snow ask for; `M+S` is not.
    ///
    /// ```
    /// use beadseat::tire::sidewall::SidewallMark;
    /// assert!(SidewallMark::parse("3PMSF")?.meets_severe_snow_rule());
    /// assert!(!SidewallMark::parse("M+S")?.meets_severe_snow_rule());
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub const fn meets_severe_snow_rule(&self) -> bool {
        matches!(self, Self::SevereSnow)
    }
}

/// Behind the spelling, if it is here and no letter or digit follows.
const fn spelled<'a>(mut scanner: Scanner<'a>, spelling: &str) -> Option<Scanner<'a>> {
    if scanner.eat_spelled(spelling) { Some(scanner) } else { None }
}

designation!(SidewallMark in "beadseat::tire::sidewall", "mud & snow" => "M+S", wrong "FRETREAD");
