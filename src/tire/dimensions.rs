//! Overall diameter and section width.

use crate::rim::RimWidth;
use crate::step::{End, Teller};
use crate::tire::size::{annex::Listing, by_aspect};
use crate::tire::{Structure, TireSize};
use crate::units::{self, Length, in_mm};
use crate::{Citation, Toleranced};

/// Share of the nominal width that its minimum may lie below it: common practice, no source.
const WIDTH_BELOW: f64 = 0.04;

/// `K` of UN R30 §6.1.1.1: change of section width for a change of rim width.
const WIDTH_PER_RIM: f64 = 0.4;

impl Listing {
    /// The measuring rim in mm, and the section width on it.
    fn width_basis(&self) -> Option<(f64, f64)> {
        Some((in_mm(self.measuring_rim?.length()), f64::from(self.section_width)))
    }
}

/// A span that holds another too; the nominal stays.
fn holding(span: Toleranced<Length>, other: Toleranced<Length>) -> Toleranced<Length> {
    Toleranced::ordered(span.min().min(other.min()), span.nominal(), span.max().max(other.max()))
}

impl TireSize {
    /// The overall diameter of a new tire, without its limits: `d + 2H` of a size with an aspect ratio in millimetres,
    /// what the table says of another that is listed, what the designation says of the others. `None` where nothing tells it; no
    /// rule that we have seen gives that of agricultural sizes.
    ///
    /// Source: UN R30 and R54 §6.1.2 and Annex 5, UN R75 Annex 5, from memory.
    ///
    /// ```
    /// use beadseat::{tire::TireSize, units::mm};
    /// assert_eq!(TireSize::parse("205/55R16")?.overall_diameter_nominal(), Some(mm(632.0)));
    /// assert_eq!(TireSize::parse("8.25R20")?.overall_diameter_nominal(), Some(mm(962.0)));
    /// assert_eq!(TireSize::parse("ER78-14")?.overall_diameter_nominal(), None);
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub fn overall_diameter_nominal(&self) -> Option<Length> {
        if let Some(row) = self.decisive_row() {
            return Some(units::mm(f64::from(row.overall_diameter)));
        }
        match self {
            Self::Metric(size) => size.class().rules().has_height_by_aspect.then(|| {
                let d = f64::from(size.rim_diameter().whole_mm());
                units::mm(d + 2.0 * f64::from(size.height_mm()))
            }),
            Self::Flotation(size) => Some(size.stated_diameter()),
            Self::FullProfile(_) | Self::Numeric(_) | Self::AlphaNumeric(_) => None,
        }
    }

    /// The overall diameter of a new tire with the limits of the UN regulations.
    ///
    /// With `2H` the diameter less the rim's `d`: `Dmin = d + 2H·0.97`, `Dmax = d + 2H·b`; `b` is 1.04
    /// for radial tires, and 1.08 (UN R30) or 1.07 (UN R54) for diagonal and bias-belted ones. `None`
    /// where the diameter is not known, and for motorcycle and off-road sizes whose limits are not, except
    /// those that UN R75 lists. The old 60 and 70 series of UN R30 Annex 5 differ from `d + 2H` by up to 8 mm:
    /// tires sold under those sizes today are made near `d + 2H`, and the limits hold both. Source: UN R30 and R54 §6.1.2 and §6.1.5, from memory.
    ///
    /// ```
    /// use beadseat::{tire::TireSize, units::mm, uom::si::length::millimeter};
    /// let d = TireSize::parse("205/55R16")?.overall_diameter().ok_or("not known")?;
    /// assert_eq!(d.nominal(), mm(632.0));
    /// assert!((d.min().get::<millimeter>() - 625.22).abs() < 1e-9);
    /// assert!((d.max().get::<millimeter>() - 641.04).abs() < 1e-9);
    /// assert_eq!(TireSize::parse("120/70ZR17 M/C")?.overall_diameter(), None);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn overall_diameter(&self) -> Option<Toleranced<Length>> {
        if let Some((listing, (least, most))) = self.listing().and_then(|l| Some((l, l.limits?))) {
            let nominal = f64::from(listing.overall_diameter);
            let [least, most] = [least, most].map(|mm| units::mm(f64::from(mm)));
            return Toleranced::new(least, units::mm(nominal), most);
        }
        let limits = self.rules().overall_diameter.as_ref()?;
        let d = f64::from(self.rim_diameter().whole_mm());
        let most = match self.structure() {
            Structure::Radial => limits.most_radial,
            Structure::Diagonal | Structure::BiasBelted => limits.most_crossed,
        };
        let of = |diameter: f64| {
            Toleranced::ordered(limits.least, 1.0, most).map(|share| units::mm(d + (diameter - d) * share))
        };
        let diameter = of(in_mm(self.overall_diameter_nominal()?));
        Some(match self.older_row() {
            Some(row) => holding(diameter, of(f64::from(row.overall_diameter))),
            None => diameter,
        })
    }

    /// The same for a snow tire, whose largest diameter may be 1 % larger. Source: UN R30 §6.1.5, from
    /// memory.
    ///
    /// ```
    /// let size = beadseat::tire::TireSize::parse("205/55R16")?;
    /// let (snow, summer) = (size.overall_diameter_snow(), size.overall_diameter());
    /// assert_eq!(snow.map(|d| d.max()), summer.map(|d| d.max() * 1.01));
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub fn overall_diameter_snow(&self) -> Option<Toleranced<Length>> {
        let d = self.overall_diameter()?;
        Some(Toleranced::ordered(d.min(), d.nominal(), d.max() * 1.01))
    }

    /// The section height of a metric size, rounded to the millimetre as the regulations do.
    ///
    /// ```
    /// use beadseat::{tire::TireSize, units::mm};
    /// assert_eq!(TireSize::parse("225/45R17")?.section_height(), Some(mm(101.0)));
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub const fn section_height(&self) -> Option<Length> {
        match self {
            Self::Metric(size) => Some(size.section_height()),
            _ => None,
        }
    }

    /// The row of a table that decides the dimensions: of a size whose designation has no aspect ratio in
    /// millimetres.
    fn decisive_row(&self) -> Option<Listing> {
        if let Self::Metric(_) = self { None } else { self.listing() }
    }

    /// The row of an older table that differs from the formula, which decides.
    fn older_row(&self) -> Option<Listing> {
        if let Self::Metric(_) = self { self.listing() } else { None }
    }

    /// Whether the dimensions stand in a row of a table known from memory alone, and nothing else gives them. What
    /// rests on such a row can call for a look, and never rule a tire out.
    ///
    /// ```
    /// use beadseat::tire::TireSize;
    /// assert!(TireSize::parse("155R13")?.rests_on_remembered_row());
    /// assert!(!TireSize::parse("205/60R13")?.rests_on_remembered_row()); // listed, but the formula decides
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub fn rests_on_remembered_row(&self) -> bool {
        Citation::LISTED_DIMENSIONS.is_from_memory() && self.decisive_row().is_some()
    }

    /// A rim width in mm and the section width on it: the *theoretical* rim of a metric size, on which the
    /// width is the nominal one (0.70 of it for aspect ratios of 50 and more, 0.85 below, 0.75 for truck
    /// sizes), or the measuring rim and width of another that is listed.
    ///
    /// The theoretical rim is not the [measuring rim](TireSize::measuring_rim). UN R30 §6.1.1.1 leaves its share
    /// to the tire's maker. Source of the shares: ETRTO, from memory; a secondary text has 0.85 at 50 already.
    fn width_basis(&self) -> Option<(f64, f64)> {
        if let Some(row) = self.decisive_row() {
            return row.width_basis();
        }
        let Self::Metric(size) = self else { return None };
        let share = by_aspect(size.class().rules().theoretical_rim?, size.aspect_ratio())?;
        let width = f64::from(size.width_mm());
        Some((share * width, width))
    }

    /// The section width on a rim: `S = S1 + 0.4·(A − A1)`, rounded to the millimetre.
    ///
    /// The maximum is the overall width that the regulations allow ([`TireSize::overall_width_citation`]),
    /// without a rim protector, which may add 8 mm. The minimum is 4 % below nominal (common practice, no
    /// source). `None` where no table and no rule gives a width on a rim: motorcycle and agricultural sizes,
    /// and sizes by inches or letter that are not listed. As of the diameter, the limits hold the old 60 and 70
    /// series of UN R30 Annex 5 too. Source: UN R30 and R54 §6.1.1.1; the theoretical rim `A1`, which the maker
    /// states as a share of `S1`, and the tables from memory.
    ///
    /// ```
    /// use beadseat::{rim::RimWidth, tire::TireSize, units::mm};
    /// let size = TireSize::parse("205/55R16")?;
    /// let on_its_measuring_rim = size.section_width_on(RimWidth::parse("6.5")?).ok_or("not known")?;
    /// assert_eq!(on_its_measuring_rim.nominal(), mm(214.0));
    /// assert_eq!(on_its_measuring_rim.max(), mm(214.0 * 1.04));
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn section_width_on(&self, rim: RimWidth) -> Option<Toleranced<Length>> {
        let limits = self.rules().overall_width.as_ref()?;
        let over = match self.structure() {
            Structure::Radial => limits.over_radial,
            Structure::Diagonal | Structure::BiasBelted => limits.over_crossed,
        };
        let shares = Toleranced::ordered(1.0 - WIDTH_BELOW, 1.0, 1.0 + over);
        let on = |(basis_rim, basis_width): (f64, f64)| {
            let nominal = libm::floor(basis_width + WIDTH_PER_RIM * (rim.mm() - basis_rim) + 0.5);
            shares.map(|share| units::mm(nominal * share))
        };
        let width = on(self.width_basis()?);
        Some(match self.older_row().and_then(|row| row.width_basis()) {
            Some(older) => holding(width, on(older)),
            None => width,
        })
    }

    /// The source of the maximum of [`TireSize::section_width_on`]: UN R30 and R54, which let the overall width be
    /// 4 % above the section width, and 6 % of diagonal and bias-belted tires; of P-metric, LT, T and ST the US
    /// regulation, which lets it be 7 % above. Both from memory.
    ///
    /// ```
    /// use beadseat::{Citation, tire::TireSize};
    /// let size = TireSize::parse("LT245/75R17")?;
    /// assert_eq!(size.overall_width_citation(), Citation::OVERALL_WIDTH_US);
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub fn overall_width_citation(&self) -> Citation {
        self.rules().overall_width.as_ref().map_or(Citation::OVERALL_WIDTH, |limits| limits.citation)
    }

    /// The source of [`TireSize::overall_diameter`].
    ///
    /// ```
    /// use beadseat::{Citation, tire::TireSize};
    /// assert!(TireSize::parse("205/55R16")?.overall_diameter_citation().is_from_memory());
    /// assert_eq!(TireSize::parse("155R13")?.overall_diameter_citation(), Citation::LISTED_DIMENSIONS);
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub fn overall_diameter_citation(&self) -> Citation {
        match self {
            _ if self.decisive_row().is_some() => Citation::LISTED_DIMENSIONS,
            Self::Flotation(_) => Citation::DESIGNATION,
            _ => Citation::OVERALL_DIAMETER,
        }
    }

    /// Tells how one end of the overall diameter comes about, of a tire that is called so.
    pub(crate) fn tell_overall_diameter(&self, whose: &str, end: End, tell: &mut Teller<'_>) -> Option<f64> {
        let source = self.overall_diameter_citation();
        let Some(span) = self.overall_diameter().filter(|_| end != End::Nominal) else {
            return self.tell_diameter_nominal(whose, tell);
        };
        if self.listing().is_some_and(|row| row.limits.is_some()) {
            let name = format_args!("{}listed overall diameter of the {whose} {self}", end.word());
            return Some(tell.given(name, in_mm(end.of(span)), "mm", Citation::LISTED_DIMENSIONS));
        }
        let limits = self.rules().overall_diameter.as_ref()?;
        let nominal = self.tell_diameter_nominal(whose, tell)?;
        let most = match self.structure() {
            Structure::Radial => limits.most_radial,
            Structure::Diagonal | Structure::BiasBelted => limits.most_crossed,
        };
        let (d, b) =
            (f64::from(self.rim_diameter().whole_mm()), end.of(Toleranced::ordered(limits.least, 1.0, most)));
        tell.given(
            format_args!("nominal rim diameter d of code {}", self.rim_diameter()),
            d,
            "mm",
            Citation::OVERALL_DIAMETER,
        );
        tell.given(format_args!("{}share b of 2H", end.word()), b, "", Citation::OVERALL_DIAMETER);
        let name = format_args!("{}overall diameter of the {whose} {self}", end.word());
        let by_formula = tell.worked(
            name,
            ("{0} + ({1} − {0}) × {2}", &[d, nominal, b]),
            d + (nominal - d) * b,
            "mm",
            source,
        );
        let Some(row) = self.older_row() else { return Some(by_formula) };
        let listed = f64::from(row.overall_diameter);
        tell.given(
            format_args!("overall diameter of {self} in an older table"),
            listed,
            "mm",
            Citation::LISTED_DIMENSIONS,
        );
        let numbers = [by_formula, d, listed, b];
        let form = if end == End::Most {
            "max({0}, {1} + ({2} − {1}) × {3})"
        } else {
            "min({0}, {1} + ({2} − {1}) × {3})"
        };
        let name = format_args!("{}overall diameter by either", end.word());
        Some(tell.worked(name, (form, &numbers), in_mm(end.of(span)), "mm", source))
    }

    /// The same without its limits.
    fn tell_diameter_nominal(&self, whose: &str, tell: &mut Teller<'_>) -> Option<f64> {
        let source = self.overall_diameter_citation();
        let nominal = in_mm(self.overall_diameter_nominal()?);
        if self.decisive_row().is_some() {
            let name = format_args!("listed overall diameter D of the {whose} {self}");
            return Some(tell.given(name, nominal, "mm", Citation::LISTED_DIMENSIONS));
        }
        let Self::Metric(size) = self else {
            let name = format_args!("overall diameter D of the {whose} {self}, as stamped");
            return Some(tell.given(name, nominal, "mm", source));
        };
        let d = f64::from(size.rim_diameter().whole_mm());
        let height = self.tell_section_height(whose, tell)?;
        tell.given(format_args!("nominal rim diameter d of code {}", size.rim_diameter()), d, "mm", source);
        let name = format_args!("overall diameter D of the {whose} {self}");
        Some(tell.worked(name, ("{0} + 2 × {1}", &[d, height]), nominal, "mm", source))
    }

    /// Tells how the section height comes about.
    pub(crate) fn tell_section_height(&self, whose: &str, tell: &mut Teller<'_>) -> Option<f64> {
        let Self::Metric(size) = self else { return None };
        let (width, aspect) = (f64::from(size.width_mm()), f64::from(size.aspect_ratio()));
        tell.given(format_args!("nominal section width of {self}"), width, "mm", Citation::DESIGNATION);
        tell.given(format_args!("aspect ratio of {self}"), aspect, "%", Citation::DESIGNATION);
        let name = format_args!("section height H of the {whose} {self}");
        let form = ("round({0} × {1} / 100)", &[width, aspect][..]);
        Some(tell.worked(name, form, in_mm(size.section_height()), "mm", Citation::OVERALL_DIAMETER))
    }

    /// Tells how one end of the section width on a rim comes about.
    pub(crate) fn tell_section_width_on(
        &self,
        rim: RimWidth,
        end: End,
        tell: &mut Teller<'_>,
    ) -> Option<f64> {
        let span = self.section_width_on(rim)?;
        let limits = self.rules().overall_width.as_ref()?;
        let over = match self.structure() {
            Structure::Radial => limits.over_radial,
            Structure::Diagonal | Structure::BiasBelted => limits.over_crossed,
        };
        let wide = rim.tell_length(tell);
        let on = |basis: Option<(f64, f64)>, of: &str, listed: bool, tell: &mut Teller<'_>| {
            let (basis_rim, basis_width) = basis?;
            let source = Citation::SECTION_WIDTH;
            let of_basis = if listed { Citation::LISTED_DIMENSIONS } else { source };
            tell.given(format_args!("section width S1 of {self}{of}"), basis_width, "mm", of_basis);
            tell.given(format_args!("rim width A1 that S1 is of{of}"), basis_rim, "mm", of_basis);
            let nominal = libm::floor(basis_width + WIDTH_PER_RIM * (rim.mm() - basis_rim) + 0.5);
            let form = ("round({0} + 0.4 × ({1} − {2}))", &[basis_width, wide, basis_rim][..]);
            let name = format_args!("section width S on a rim of {rim}{of}");
            Some(tell.worked(name, form, nominal, "mm", source))
        };
        let nominal = on(self.width_basis(), "", self.decisive_row().is_some(), tell)?;
        if end == End::Nominal {
            return Some(nominal);
        }
        let older = self.older_row().and_then(|row| on(row.width_basis(), " in an older table", true, tell));
        let source = if end == End::Most { limits.citation } else { Citation::LEAST_WIDTH };
        let share = if end == End::Most { 1.0 + over } else { 1.0 - WIDTH_BELOW };
        tell.given(format_args!("{}share of S", end.word()), share, "", source);
        let name = format_args!("{}width of {self} on a rim of {rim}", end.word());
        let width = in_mm(end.of(span));
        Some(match older {
            Some(older) => {
                let form = if end == End::Most { "max({0}, {1}) × {2}" } else { "min({0}, {1}) × {2}" };
                tell.worked(name, (form, &[nominal, older, share]), width, "mm", source)
            }
            None => tell.worked(name, ("{0} × {1}", &[nominal, share]), width, "mm", source),
        })
    }
}
