//! Types that are written as text.

/// Makes a type that parses from and prints as text do the same in JSON. It is read without a copy: most of a journal
/// is names and days.
macro_rules! text_in_json {
    ($($name:ty),+) => {$(
        impl serde::Serialize for $name {
            fn serialize<S: serde::Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
                serializer.collect_str(self)
            }
        }

        impl<'de> serde::Deserialize<'de> for $name {
            fn deserialize<D: serde::Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
                struct Written;

                impl serde::de::Visitor<'_> for Written {
                    type Value = $name;

                    fn expecting(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
                        f.write_str("a string")
                    }

                    fn visit_str<E: serde::de::Error>(self, text: &str) -> Result<$name, E> {
                        text.parse().map_err(|fault| E::custom($crate::basics::misread::Misread::from(fault)))
                    }
                }

                deserializer.deserialize_str(Written)
            }
        }
    )+};
}

pub(crate) use text_in_json;
