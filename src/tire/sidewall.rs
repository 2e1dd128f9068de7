//! Single marks of the sidewall: words, letters and symbols that stand by themselves.

mod approval;
mod line;
mod mark;
mod marks;
mod plies;
mod set;

pub use approval::{ApprovalAuthority, ApprovalMark, ApprovalStage};
pub use line::contradiction::LineContradiction;
pub use line::{MoldedLimit, SidewallLine};
pub use mark::{MarkTopic, SidewallMark};
pub use marks::SidewallMarks;
pub use plies::{Cord, Layer, Plies};
