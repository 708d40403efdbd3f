//! Rules on services: what hops come to together from site to site.

pub mod route_broken;
pub mod routes_share;
pub mod service_availability_below_objective;
pub mod service_capacity_below_objective;
pub mod service_delay_above_objective;
pub mod service_not_judged;
