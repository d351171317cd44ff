//! Several files in one archive (ZIP, deflated): the same bytes for the same files, whenever it is made.

use std::io::Cursor;
use std::io::Write;

use ::zip::CompressionMethod;
use ::zip::DateTime;
use ::zip::ZipWriter;
use ::zip::result::ZipError;
use ::zip::write::SimpleFileOptions;

/// The bytes of an archive with these files, in this order, in a folder of this name.
///
/// # Errors
/// What the writing failed of.
pub fn zip(folder: &str, files: &[(String, Vec<u8>)]) -> Result<Vec<u8>, ZipError> {
    // No day of making: it would differ each time. This is the first one that the format knows.
    let options = SimpleFileOptions::default()
        .compression_method(CompressionMethod::Deflated)
        .last_modified_time(DateTime::default())
        .unix_permissions(0o644);
    let mut archive = ZipWriter::new(Cursor::new(Vec::new()));
    for (name, bytes) in files {
        archive.start_file(format!("{folder}/{name}"), options)?;
        archive.write_all(bytes)?;
    }
    Ok(archive.finish()?.into_inner())
}

#[cfg(test)]
mod tests {
    use std::io::Read;

    use super::*;

    #[test]
    fn what_goes_in_comes_out_and_twice_the_same() {
        let files = [("visits.csv".to_owned(), b"area,due\r\nulopi,12\r\n".repeat(50)), ("README.txt".to_owned(), "é".into())];
        let bytes = zip("2026-10", &files).expect("written");
        assert_eq!(bytes, zip("2026-10", &files).expect("written"));
        let mut read = ::zip::ZipArchive::new(Cursor::new(bytes)).expect("an archive");
        assert_eq!(read.len(), 2);
        for (at, (name, wanted)) in files.iter().enumerate() {
            let mut file = read.by_index(at).expect("a file");
            let mut found = Vec::new();
            file.read_to_end(&mut found).expect("readable");
            assert_eq!((file.name().expect("a name"), &found), (format!("2026-10/{name}").into(), wanted));
        }
    }
}
