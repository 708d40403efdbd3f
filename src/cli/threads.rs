//! The threads the work is spread over: as many as there are cores, or as `RAYON_NUM_THREADS` asks for within reason, and
//! fewer where the system gives fewer. None at all is enough.

use std::thread::available_parallelism;

use rayon::ThreadPoolBuilder;

/// More threads than this are made only for as many cores: each costs memory and time to start.
const MOST: usize = 64;

/// Does the work where all that it spreads out finds threads.
pub(super) fn on_threads<R: Send>(work: impl FnOnce() -> R + Send) -> R {
    let mut count = wanted(std::env::var("RAYON_NUM_THREADS").ok().as_deref());
    while count > 0 {
        if let Ok(pool) = ThreadPoolBuilder::new().num_threads(count).build() {
            return pool.install(work);
        }
        count /= 2;
    }
    match ThreadPoolBuilder::new().num_threads(1).use_current_thread().build() {
        Ok(pool) => pool.install(work),
        Err(_) => work(),
    }
}

/// How many threads to ask for.
fn wanted(asked: Option<&str>) -> usize {
    let cores = available_parallelism().map_or(1, usize::from);
    match asked.and_then(|asked| asked.parse().ok()) {
        None | Some(0) => cores,
        Some(asked) => cores.max(MOST).min(asked),
    }
}

#[cfg(test)]
mod tests {
    use super::{MOST, available_parallelism, wanted};

    #[test]
    fn a_number_that_is_asked_for_is_kept_within_reason() {
        let cores = available_parallelism().map_or(1, usize::from);
        assert_eq!(["1", "2", "64"].map(|asked| wanted(Some(asked))), [1, 2, 64]);
        assert_eq!(wanted(Some("100000")), MOST.max(cores));
        assert_eq!([None, Some("0"), Some("many"), Some("-1")].map(wanted), [cores; 4]);
    }
}
