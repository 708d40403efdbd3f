//! Rules on lightning protection as it is stated. None of them designs or certifies any.

pub mod antenna_outside_protected_volume;
pub mod arrester_test_unfit;
pub mod arrester_test_unstated;
pub mod lightning_facts_disagree;
pub mod lightning_not_judged;
pub mod mast_bond_unstated;
pub mod protected_volume_unstated;
pub mod protection_level_too_high;
pub mod separation_too_small;
pub mod separation_unstated;
