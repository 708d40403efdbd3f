//! Rules on what document control asks of the packs.

pub mod title_block_open;
