import { LEDGER_LINES, type LedgerId } from "./ledger.ts";

/** What a run logs, in the order of the export, with the unit in the column's name. */
export const CHANNELS = [
  { id: "time", column: "time_s", title: "time" },
  { id: "target", column: "target_mps", title: "target speed" },
  { id: "speed", column: "speed_mps", title: "road speed" },
  { id: "distance", column: "distance_m", title: "distance" },
  { id: "grade", column: "grade", title: "grade" },
  { id: "wheelForceAsk", column: "wheel_force_ask_n", title: "force asked at the wheels" },
  { id: "wheelPowerAsk", column: "wheel_power_ask_w", title: "power asked at the wheels" },
  { id: "engineOn", column: "engine_on", title: "engine running" },
  { id: "engineSpeed", column: "engine_speed_radps", title: "engine and carrier speed" },
  { id: "engineTorque", column: "engine_torque_nm", title: "engine torque on the carrier" },
  { id: "fuelPower", column: "fuel_power_w", title: "fuel power" },
  { id: "fuel", column: "fuel_j", title: "fuel used" },
  { id: "sunMachineSpeed", column: "sun_machine_speed_radps", title: "sun machine speed" },
  { id: "sunMachineTorque", column: "sun_machine_torque_nm", title: "sun machine torque" },
  { id: "sunMachineElectric", column: "sun_machine_electric_w", title: "sun machine electrical power" },
  { id: "outputMachineSpeed", column: "output_machine_speed_radps", title: "output machine speed" },
  { id: "outputMachineTorque", column: "output_machine_torque_nm", title: "output machine torque" },
  {
    id: "outputMachineElectric",
    column: "output_machine_electric_w",
    title: "output machine electrical power",
  },
  { id: "ringSpeed", column: "ring_speed_radps", title: "ring speed" },
  { id: "sunTorque", column: "sun_torque_nm", title: "sun torque on the gear set" },
  { id: "ringTorque", column: "ring_torque_nm", title: "ring torque on the gear set" },
  { id: "carrierTorque", column: "carrier_torque_nm", title: "carrier torque on the gear set" },
  { id: "frictionBrake", column: "friction_brake_n", title: "friction brake force" },
  { id: "batteryPower", column: "battery_power_w", title: "battery power" },
  { id: "batteryCurrent", column: "battery_current_a", title: "battery current" },
  { id: "batteryVoltage", column: "battery_voltage_v", title: "battery voltage" },
  { id: "soc", column: "soc", title: "state of charge" },
  { id: "auxiliary", column: "aux_w", title: "auxiliary power" },
  { id: "recovered", column: "recovered_j", title: "energy recovered into the battery by braking" },
] as const;

/** Name of a channel that is exported as a number. */
export type ChannelId = (typeof CHANNELS)[number]["id"];

/** Column name of a ledger line in the export. */
export const ledgerColumn = (id: LedgerId): string => `${id}_j`;

/** All column names of the export, in order. */
export const EXPORT_COLUMNS: readonly string[] = [
  ...CHANNELS.map((channel) => channel.column),
  "regime",
  "limits",
  ...LEDGER_LINES.map((line) => ledgerColumn(line.id)),
];
