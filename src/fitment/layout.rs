//! Text laid out for a terminal.

use core::fmt::{self, Write};

use crate::text::Text;

/// Columns of the terminal.
const WIDTH: usize = 80;

/// What stands for text that was cut.
const DOTS: &str = "...";

/// Breaks text into lines no wider than the terminal; every line but the first begins with `indent`
/// spaces. A word is held back until it ends, so text may come in pieces; [`Wrap::end`] lets the last go.
pub(super) struct Wrap<'a, 'b> {
    out: &'a mut fmt::Formatter<'b>,
    indent: usize,
    column: usize,
    word: Text,
    /// Lines that may still be begun.
    left: usize,
    is_cut: bool,
}

impl<'a, 'b> Wrap<'a, 'b> {
    pub(super) fn new(out: &'a mut fmt::Formatter<'b>, indent: usize) -> Self {
        Self { out, indent, column: indent, word: Text::new(), left: usize::MAX, is_cut: false }
    }

    /// With no more lines than this: what is left over is cut, and three dots say so.
    pub(super) fn of_lines(out: &'a mut fmt::Formatter<'b>, indent: usize, lines: usize) -> Self {
        Self { left: lines.saturating_sub(1), ..Self::new(out, indent) }
    }

    /// Lines that may still be begun.
    pub(super) const fn lines_left(&self) -> usize {
        self.left
    }

    pub(super) fn flush(&mut self) -> fmt::Result {
        let width = self.word.as_str().chars().count();
        if width == 0 || self.is_cut {
            return Ok(());
        }
        if self.column > self.indent {
            // The last line keeps room for the dots.
            let room = if self.left == 0 { WIDTH - DOTS.len() - 1 } else { WIDTH };
            if self.column + 1 + width > room {
                if self.left == 0 {
                    self.is_cut = true;
                    return write!(self.out, " {DOTS}");
                }
                self.left -= 1;
                write!(self.out, "\n{:1$}", "", self.indent)?;
                self.column = self.indent;
            } else {
                self.out.write_char(' ')?;
                self.column += 1;
            }
        }
        self.out.write_str(self.word.as_str())?;
        self.column += width;
        self.word = Text::new();
        Ok(())
    }

    pub(super) fn new_line(&mut self) -> fmt::Result {
        self.column = self.indent;
        self.out.write_char('\n')
    }

    pub(super) fn end(&mut self) -> fmt::Result {
        self.flush()?;
        self.out.write_char('\n')
    }
}

impl Write for Wrap<'_, '_> {
    fn write_str(&mut self, text: &str) -> fmt::Result {
        for (n, piece) in text.split([' ', '\n']).enumerate() {
            if n > 0 {
                self.flush()?;
            }
            self.word.str(piece);
        }
        Ok(())
    }
}

/// Text that begins at a column and is broken there.
pub(super) fn wrapped(f: &mut fmt::Formatter<'_>, indent: usize, text: impl fmt::Display) -> fmt::Result {
    let mut wrap = Wrap::new(f, indent);
    write!(wrap, "{text}")?;
    wrap.end()
}

/// A short text made of anything, on the stack.
fn text_of(value: impl fmt::Display) -> Result<Text, fmt::Error> {
    struct Into(Text);
    impl Write for Into {
        fn write_str(&mut self, text: &str) -> fmt::Result {
            self.0.str(text);
            Ok(())
        }
    }
    let mut buffer = Into(Text::new());
    write!(buffer, "{value}")?;
    Ok(buffer.0)
}

/// Whether two things read the same.
pub(super) fn reads_alike(a: impl fmt::Display, b: impl fmt::Display) -> bool {
    matches!((text_of(a), text_of(b)), (Ok(a), Ok(b)) if a.as_str() == b.as_str())
}

/// Anything in a column: padded by the formatter through a stack buffer.
pub(super) struct Cell<T>(pub(super) T);

impl<T: fmt::Display> fmt::Display for Cell<T> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.pad(text_of(&self.0)?.as_str())
    }
}

/// A line of cells that each begin at a column, or a space behind what is longer; with nothing behind the last.
pub(super) fn line(f: &mut fmt::Formatter<'_>, cells: &[(usize, &dyn fmt::Display)]) -> fmt::Result {
    let mut column = 0;
    for (at, cell) in cells {
        let text = text_of(cell)?;
        let text = text.as_str();
        if !text.is_empty() {
            let gap = at.saturating_sub(column).max(usize::from(column > 0));
            write!(f, "{:gap$}{text}", "")?;
            column += gap + text.chars().count();
        }
    }
    f.write_char('\n')
}

/// Nothing, or the value.
pub(super) struct Maybe<T>(pub(super) Option<T>);

impl<T: fmt::Display> fmt::Display for Maybe<T> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match &self.0 {
            Some(value) => value.fmt(f),
            None => Ok(()),
        }
    }
}
