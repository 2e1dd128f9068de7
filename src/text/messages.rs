//! What errors say: an enum of fixed messages, and of errors that speak for themselves.

/// `Display` and `Error` of an error enum, and `From` for every error that it passes on.
macro_rules! messages {
    ($name:ident { $($fixed:ident => $text:literal,)* } passes { $($(#[$cfg:meta])? $passed:ident($error:ty),)* }) => {
        impl core::fmt::Display for $name {
            fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
                match self {
                    $(Self::$fixed => f.write_str($text),)*
                    $($(#[$cfg])? Self::$passed(error) => core::fmt::Display::fmt(error, f),)*
                }
            }
        }

        impl core::error::Error for $name {
            fn source(&self) -> Option<&(dyn core::error::Error + 'static)> {
                match self {
                    $($(#[$cfg])? Self::$passed(error) => error.source(),)*
                    #[allow(unreachable_patterns)]
                    _ => None,
                }
            }
        }

        $($(#[$cfg])? impl From<$error> for $name {
            fn from(error: $error) -> Self {
                Self::$passed(error)
            }
        })*
    };
}
pub(crate) use messages;
