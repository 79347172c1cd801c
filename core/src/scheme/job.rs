use super::read::{ReadError, known, parse};
use super::{SCHEMA, Scheme, write};
use crate::json;
use serde::{Deserialize, Serialize};

/// All options of one job, as a file holds them. One option alone is written as a plain scheme.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Job {
    /// Version of the file format, [`SCHEMA`].
    pub schema: u32,
    /// Index of the option on the sheet.
    #[serde(default)]
    pub at: usize,
    /// In their order. A blank sheet may be among several.
    pub options: Vec<Scheme>,
    /// Options that were put away and can be brought back.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub put_away: Vec<Scheme>,
}

impl Job {
    /// These options, the one of this index on the sheet.
    pub fn new(options: Vec<Scheme>, at: usize, put_away: Vec<Scheme>) -> Self {
        Self { schema: SCHEMA, at, options, put_away }
    }

    /// Reads a job from the text of a file; a plain scheme is a job of one option.
    ///
    /// # Errors
    /// A text that is neither, or an option that cannot be worked with.
    pub fn read(text: &str) -> Result<Self, ReadError> {
        let (text, several) = known(text)?;
        if !several {
            return super::read(text).map(|scheme| Self::new(vec![scheme], 0, Vec::new()));
        }
        let mut job: Self = parse(text)?;
        for (index, scheme) in job.options.iter().chain(&job.put_away).enumerate() {
            if scheme.schema > SCHEMA {
                return Err(ReadError::Newer { found: scheme.schema.into() });
            }
            if !scheme.is_blank() {
                let option = || if scheme.option.is_empty() { (index + 1).to_string() } else { scheme.option.clone() };
                scheme.validate().map_err(|errors| ReadError::InvalidOption { option: option(), errors })?;
            }
        }
        job.at = job.at.min(job.options.len().checked_sub(1).ok_or(ReadError::NoOptions)?);
        Ok(job)
    }

    /// Writes the job as text that [`Job::read`] turns into the same job.
    pub fn write(&self) -> String {
        match (self.options.as_slice(), self.put_away.as_slice()) {
            ([alone], []) => write(alone),
            _ => json::write_indented(self),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::super::{Bays, heron_lane};
    use super::*;

    fn options() -> Vec<Scheme> {
        let demo = heron_lane().unwrap();
        let wider = Scheme { option: "B".into(), bays: Bays { count: 3, ..demo.bays }, ..demo.clone() };
        vec![demo, wider, Scheme { option: "C".into(), ..Scheme::empty() }]
    }

    #[test]
    fn a_file_of_one_scheme_is_a_job_of_one_option_and_stays_the_same_text() {
        let demo = heron_lane().unwrap();
        let text = write(&demo);
        assert!(!text.contains("\"option\""), "a scheme without a name of its own is written as it ever was");
        let job = Job::read(&text).unwrap();
        assert_eq!(job, Job::new(vec![demo], 0, Vec::new()));
        assert_eq!(job.write(), text);
    }

    #[test]
    fn all_options_come_back_in_their_order_also_a_blank_one_and_those_put_away() {
        let mut put_away = options();
        let shown = put_away.split_off(1);
        for job in [Job::new(options(), 1, Vec::new()), Job::new(shown, 0, put_away)] {
            assert_eq!(super::super::read(&job.write()), Err(ReadError::SeveralOptions));
            assert_eq!(Job::read(&job.write()), Ok(job));
        }
    }

    #[test]
    fn a_job_that_cannot_be_worked_with_is_refused_by_name() {
        let mut faulty = options();
        faulty[1].bays.length_m = -1.0;
        let error = Job::read(&Job::new(faulty, 0, Vec::new()).write()).unwrap_err();
        assert!(error.to_string().starts_with("In option B: "), "{error}");
        let none = Job::new(Vec::new(), 0, options()).write();
        assert_eq!(Job::read(&none), Err(ReadError::NoOptions));
        let beyond = Job::new(options(), 9, Vec::new()).write();
        assert_eq!(Job::read(&beyond).map(|job| job.at), Ok(2));
        let mut newer = options();
        newer[2].schema = 99;
        assert_eq!(Job::read(&Job::new(newer, 0, Vec::new()).write()), Err(ReadError::Newer { found: 99 }));
    }
}
