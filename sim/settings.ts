/**
 * Tuning numbers of the engine that are no vehicle's property: each with its unit and why it has this size.
 */

/** Grid of strategy, driver, filters and timers, s, whatever the time step is. */
export const CONTROL_PERIOD = 0.1;

/** Ring speed over which the gear losses of final drive and reduction fade in, rad/s: about 0.3 km/h. */
export const GEAR_SMOOTHING = 1;

/** Charge over which the battery's currents taper to nothing at the ends of its window, as a share. */
export const SOC_TAPER = 0.02;

/** Charge above the floor, as a share, at which the engine is started whatever the strategy says. */
export const SOC_FORCED_START = 0.03;

/** Charge below the ceiling, as a share, from which the engine makes no power for the battery. */
export const SOC_NO_CHARGE = 0.02;

/** Share of the machine's greatest speed up to which the supervisor lets the sun run. */
export const SUN_SPEED_SHARE = 0.95;

/** Time over which the extra fuel of a start flows, s: a whole number of control periods. */
export const START_FUEL_TIME = 0.4;

/** Greatest acceleration of the carrier that cranking asks for, rad/s². */
export const CRANK_ACCELERATION = 320;

/** Deceleration of the carrier while the engine is stopped, rad/s². */
export const STOP_DECELERATION = 350;

/** Carrier speed below which a stopping engine is left to its friction, rad/s. */
export const LAST_OF_STOP = 1;

/** Indicated torque below which a fuel cut is complete, N·m. */
export const LAST_TORQUE = 0.5;

/** Share of idle speed at which a cranked engine fires. */
export const FIRING_SHARE = 0.8;

/** Air temperature at which the engine's cold friction is stated, K. */
export const COLD_REFERENCE = 293.15;

/** Driver's preview, s: the speed this far ahead is what he steers to. */
export const DRIVER_PREVIEW = 0.5;

/** Driver's integral gain on speed error, 1/s². */
export const DRIVER_INTEGRAL = 0.35;

/** Speed error beyond which the driver's integral waits: the vehicle cannot follow, m/s. */
export const DRIVER_PATIENCE = 1.5;

/** Speed below which a vehicle asked to stand is stopped by the brakes alone, m/s. */
export const STANDSTILL_SPEED = 0.3;

/** Deceleration that the brakes hold a standing vehicle with, m/s². */
export const HOLD_DECELERATION = 3;

/**
 * Most rounds in which one step's torques are cut to the battery's limits. Two are usual; a machine that hardly turns
 * takes more, since its power is then square in its torque and each round only halves what is left.
 */
export const DC_ROUNDS = 16;

/** Relative margin by which a cut stays inside the battery's limit. */
export const DC_MARGIN = 1e-7;

/** Air density of the default run and of coast-downs, kg/m³: UN GTR No. 15 reference, 293 K and 100 kPa (from memory). */
export const REFERENCE_AIR_DENSITY = 1.189;

/** How much faster than it rises the engine power asked may fall. */
export const POWER_FALL = 3;

/** Share of the battery's charging limit that the supervisor plans with: the rest is for control. */
export const CHARGE_PLAN = 0.9;

/** Share of efficiency lost between wheels and machine, for the demand that a strategy sees. */
export const DEMAND_EFFICIENCY = 0.93;

/** Share of the sun machine's torque that the engine may load: the rest is for control. */
export const SUN_CONTROL_SHARE = 0.97;

/** Braking power at the wheels from which a full battery brings the engine in to hold the vehicle back, W. */
export const ENGINE_BRAKING_POWER = 6000;

/** Time for which that must last, and later be over, s: a touch of the brakes or a ripple of the foot changes nothing. */
export const ENGINE_BRAKING_PATIENCE = 1;

/** Braking power at the wheels below which the engine is let go again, W: a third. */
export const ENGINE_BRAKING_RELEASE = 2000;

/** Charging current below which the battery counts as full for that, as a share of its limit. */
export const FULL_BATTERY_SHARE = 0.15;

/** Share from which it counts as emptied again: by the taper, some 0.7 % of the charge lie between the two. */
export const EMPTIED_BATTERY_SHARE = 0.5;

/** Greatest share of the engine's greatest speed at which it holds the vehicle back. */
export const ENGINE_BRAKING_SPEED = 0.75;

/**
 * Greatest change of the engine's speed while it holds back, rad/s². About what its own friction slows it by, so that
 * slowing it makes no electricity that the battery cannot take, and turning it up needs little.
 */
export const ENGINE_BRAKING_RATE = 60;

/** Share of the electricity made at the driven axle that comes from the wheels' braking, final drive to inverter. */
export const BRAKING_EFFICIENCY = 0.88;

/** Share by which the currents may serve auxiliaries and standby losses even with an empty battery. */
export const STANDBY_SHARE = 1.5;
