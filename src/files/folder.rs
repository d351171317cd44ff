//! Folders on the disk: made where there is none, and filled so that nobody ever reads half a file.

use std::io::Error;
use std::io::ErrorKind;
use std::path::Path;
use std::path::PathBuf;

/// Makes a folder with all above it, if it is not there.
///
/// # Errors
/// What the system said, or which file stands in the way.
pub fn make(folder: &Path) -> Result<(), Error> {
    std::fs::create_dir_all(folder).map_err(|error| match folder.ancestors().find(|above| above.is_file()) {
        Some(file) => Error::new(ErrorKind::NotADirectory, format!("{} is a file, not a folder", file.display())),
        None => error,
    })
}

/// Puts files into a folder. All are written beside their places first and moved there afterwards, so that a full disk leaves
/// what was there before as it was.
///
/// # Errors
/// The file that could not be put there, and what the system said.
pub fn put(folder: &Path, files: &[(String, Vec<u8>)]) -> Result<Vec<PathBuf>, (PathBuf, Error)> {
    let places: Vec<(PathBuf, PathBuf)> = files.iter().map(|(name, _)| (folder.join(format!("{name}.part")), folder.join(name))).collect();
    if let Some((_, place)) = places.iter().find(|(_, place)| place.is_dir()) {
        return Err((place.clone(), Error::new(ErrorKind::IsADirectory, "is a folder, not a file")));
    }
    let mut begun = 0;
    let write = |((beside, place), (_, bytes)): (&(PathBuf, PathBuf), &(String, Vec<u8>))| {
        begun += 1;
        std::fs::write(beside, bytes).map_err(|error| (place.clone(), error))
    };
    let shift = |(beside, place): &(PathBuf, PathBuf)| std::fs::rename(beside, place).map_err(|error| (place.clone(), error));
    let done = places.iter().zip(files).try_for_each(write).and_then(|()| places.iter().try_for_each(shift));
    if let Err(refused) = done {
        for (beside, _) in places.iter().take(begun) {
            // What is not there any more was moved; what cannot be removed is for the one fault that is told.
            let _ = std::fs::remove_file(beside);
        }
        return Err(refused);
    }
    Ok(places.into_iter().map(|(_, place)| place).collect())
}
