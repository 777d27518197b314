// SPDX-License-Identifier: MIT
// Questions for the comparison: the worked examples, hand-made awkward texts, and generated ones.
import { readFileSync, readdirSync } from 'node:fs';

const examplesFolder = new URL('../reference/door/', import.meta.url);
const demoHouse = new URL('../../assets/demo_house.json', import.meta.url);

/** Numbers that are the same everywhere: a 32-bit multiplicative generator (mulberry32). */
export class Dice {
  constructor(seed) {
    this.state = seed >>> 0;
  }
  unit() {
    this.state = (this.state + 0x6d2b79f5) >>> 0;
    let t = this.state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  }
  between(low, high) {
    return Number((low + (high - low) * this.unit()).toPrecision(6));
  }
  below(count) {
    return Math.floor(this.unit() * count);
  }
  pick(list) {
    return list[this.below(list.length)];
  }
}

const many = (count, make) => Array.from({ length: count }, (_, i) => make(i));

function glazing(dice) {
  const panes = 1 + dice.below(4);
  const method = dice.pick(['declared', 'detailed']);
  const gas = () => {
    const share = dice.between(0.5, 1);
    const rest = Number((1 - share).toFixed(12));
    return { [dice.pick(['argon', 'krypton', 'xenon'])]: share, air: rest };
  };
  const sunlit = dice.below(2) === 1;
  const optics = () => {
    const transmittance = dice.between(0.2, 0.85);
    return { transmittance, reflectance_out: dice.between(0.05, 1 - transmittance),
      reflectance_in: dice.pick([0.07, 0.12]) };
  };
  const sun = dice.pick([{ angle_deg: dice.between(0, 89) }, { diffuse: true }]);
  return {
    ...(sunlit ? { sun } : {}),
    method,
    tilt_deg: dice.pick([90, 90, 60, 30, 0, 120, 180]),
    height_m: dice.between(0.3, 3),
    panes: many(panes, () => ({
      thickness_m: dice.between(0.002, 0.012),
      emissivity_out: dice.pick([0.84, 0.05, 0.2]),
      emissivity_in: dice.pick([0.84, 0.04, 0.1]),
      ...(sunlit ? { solar: optics(), light: optics() } : {}),
    })),
    gaps: many(panes - 1, () => ({ width_m: dice.between(0.004, 0.05), gas: gas() })),
    outside: { air_c: dice.between(-40, 35) },
    inside: { air_c: dice.between(15, 28) },
  };
}

function section(dice, columns, accuracy) {
  const width = dice.between(0.1, 0.5);
  const height = dice.between(0.1, 0.5);
  const regions = [{ x0_m: 0, y0_m: 0, x1_m: width, y1_m: height, conductivity_w_mk: 0.2 }];
  const span = (extent) => {
    const from = dice.between(0, 0.8) * extent;
    return [from, from + dice.between(0.05, 0.2) * extent];
  };
  for (let i = 0; i < columns; ++i) {
    const [x0_m, x1_m] = span(width);
    const [y0_m, y1_m] = span(height);
    const fill = dice.pick([
      { conductivity_w_mk: dice.pick([0.024, 0.13, 0.17, 1, 160]) },
      { conductivity_w_mk: dice.between(0.02, 2) },
      { cavity: { ventilation: dice.pick(['none', 'slight']), flow: dice.pick(['x', 'y']),
        temperatures: dice.pick(['standard', 'found']) } },
      { air: dice.pick(['outside', 'inside']) },
    ]);
    regions.push({ x0_m, y0_m, x1_m, y1_m, ...fill });
  }
  const y0_m = dice.between(0.2, 0.7) * height;
  const channel = { x0_m: 0, y0_m, x1_m: width, y1_m: y0_m + dice.between(0.01, 0.1) * height };
  const creeps = dice.pick([true, false, false]);
  if (creeps) regions.push({ ...channel, conductivity_w_mk: 0.025 });
  return {
    width_m: width,
    height_m: height,
    ...(creeps && {
      streams: {
        joint: {
          inlet_c: dice.between(-10, 20),
          capacity_w_mk: dice.pick([0, 0.01, 0.3, 2, 50]),
          path: [{ ...channel, from: dice.pick(['left', 'right']), film_w_m2k: 10 }],
        },
      },
    }),
    airs: {
      outside: { air_c: dice.between(-30, 5), film_w_m2k: 25 },
      inside: { air_c: dice.between(18, 25), film_w_m2k: 7.7 },
    },
    regions,
    edges: [
      { side: 'left', from_m: 0, to_m: height, air: 'outside' },
      { side: 'right', from_m: 0, to_m: height, air: 'inside' },
    ],
    probes: many(5, () => [dice.between(0, 1) * width, dice.between(0, 1) * height]),
    accuracy,
  };
}

const comfort = (dice) => ({
  air_c: dice.between(10, 32),
  radiant_c: dice.between(5, 35),
  speed_m_s: dice.between(0, 1),
  rh: dice.between(0, 1),
  met: dice.between(0.8, 3),
  clo: dice.between(0, 2),
  turbulence_pct: dice.between(0, 80),
  ankle: { air_c: dice.between(14, 24), speed_m_s: dice.between(0, 0.7) },
});

const leakIntoRoom = (dice) => ({
  where: dice.pick(['shim_left', 'sash_bottom', 'shim', 'sash']),
  flow_m3_s: dice.between(-0.001, 0.004),
  air_c: dice.between(-25, 15),
  gap_m: dice.between(0.0002, 0.006),
  length_m: dice.between(0.3, 3),
  height_m: dice.between(0, 2),
});

const room = (dice) => ({
  window: {
    width_m: dice.between(0.4, 3),
    height_m: dice.between(0.4, 1.6),
    sill_m: dice.between(0, 0.8),
    surface_c: dice.between(-10, 22),
    frame_c: dice.between(-10, 22),
  },
  room: { air_c: dice.between(17, 25), rh: dice.between(0.1, 0.8) },
  person: { distance_m: dice.between(0.2, 3.5), posture: dice.pick(['seated', 'standing']) },
  leaks: many(dice.below(4), () => leakIntoRoom(dice)),
});

function leak(dice) {
  const crack = () =>
    dice.pick([
      {
        gap_m: dice.between(0.0001, 0.01),
        depth_m: dice.between(0.01, 0.3),
        length_m: dice.between(0.1, 6),
        bends: dice.below(5),
      },
      { coefficient_m3_s_pan: dice.between(0, 0.01), exponent: dice.between(0.5, 1) },
      { rating_l_s_m2: dice.between(0, 5), area_m2: dice.between(0.5, 4) },
    ]);
  const drive = {
    inside_c: dice.between(15, 25),
    outside_c: dice.between(-35, 30),
    wind_m_s: dice.between(0, 20),
    height_above_neutral_m: dice.between(-6, 6),
    shelter: dice.between(0, 1),
  };
  const pressure = dice.below(2) ? { drive } : { pressure_pa: dice.between(-75, 75) };
  return { cracks: many(1 + dice.below(4), crack), ...pressure };
}

const moisture = (dice) => ({
  air_c: dice.between(10, 30),
  rh: dice.between(0, 1),
  surface_c: dice.between(-25, 30),
  outside_c: dice.between(-40, 30),
});

const thermography = (dice) => ({
  reading_c: dice.between(-10, 25),
  set_emissivity: dice.between(0.8, 1),
  surface_emissivity: dice.between(0.7, 1),
  reflected_c: dice.between(10, 30),
  inside_c: dice.between(16, 26),
  outside_c: dice.between(-30, 10),
  ...dice.pick([
    {},
    { angle_deg: dice.between(0, 80), wind_m_s: dice.between(0, 10) },
    { side: 'outside', sky: dice.pick(['clear', 'overcast']) },
    { window: { glazing: { panes: 1 + dice.below(3), gas: dice.pick(['air', 'argon']) } } },
    { part: dice.pick(['glass_edge', 'frame', 'casing']),
      window: { frame: dice.pick(['wood', 'vinyl']), shim: { fill: dice.pick(['open', 'foamed']) } } },
  ]),
});

/** Twelve months of one's own, or a place of the table; sometimes a remedy and its money. */
function year(dice) {
  const own = () => ({
    latitude_deg: dice.between(25, 62),
    elevation_m: dice.between(0, 2500),
    months: many(12, (n) => ({
      mean_c: dice.between(-5, 5) - 14 * Math.cos(((n - 0.5) * Math.PI) / 6),
      swing_k: dice.between(4, 18),
      wind_m_s: dice.between(0, 9),
      sun_wh_m2: dice.between(5, 500),
    })),
  });
  const window = () => ({
    conduction_w_k: dice.between(0.5, 10),
    facing_deg: dice.between(0, 360),
    tilt_deg: dice.between(0, 90),
    glass: { area_m2: dice.between(0.2, 3), shgc: dice.between(0.1, 0.9) },
    shade: dice.between(0, 0.8),
    leak: {
      coefficient_m3_s_pan: dice.between(0, 0.002),
      height_above_neutral_m: dice.between(-5, 5),
    },
  });
  const money = {
    fuel: dice.pick(['natural gas', 'propane', 'heating oil', 'electricity', 'heat pump', 'wood']),
    price_per_unit: dice.between(0.1, 5),
    hours: dice.between(0, 20),
    rate_per_h: dice.between(30, 120),
    material: dice.between(10, 2000),
    seed: dice.below(1e6),
  };
  return {
    climate: dice.pick([own(), 'Denver CO', 'Toronto ON', 'Anchorage AK', 'Miami FL']),
    window: window(),
    ...dice.pick([{}, { remedy: window(), thermostat_lower_k: dice.below(3), money }]),
    ...dice.pick([{}, { day_of_month: 1 + dice.below(12) }]),
  };
}

const testAnswers = {
  lock_home: ['gone', 'weaker', 'same'], wind: ['yes', 'no'], tissue_pane: ['yes', 'no'],
  tissue_casing: ['yes', 'no'], fans: ['grows', 'somewhat', 'same'], flame: ['yes', 'no'],
  tape_sash: ['gone', 'weaker', 'same'], tape_casing: ['gone', 'weaker', 'same'],
};

function findOut(dice) {
  const asked = Object.entries(testAnswers).filter(() => dice.below(2));
  const cause = () => dice.between(0, 1);
  return {
    prediction: { cold_glass: cause(), sash_leak: cause(), shim_leak: cause() },
    answers: Object.fromEntries(asked.map(([test, words]) => [test, dice.pick(words)])),
    thermometer: dice.below(2) === 1,
  };
}

/** The demo house with its openings' fields moved about; one opening, to keep it quick. */
function house(dice) {
  const file = JSON.parse(readFileSync(demoHouse, 'utf8'));
  const opening = dice.pick(file.openings);
  opening.remedies = [dice.pick(opening.remedies)];
  opening.chosen = 0;
  opening.room.rh = dice.between(0.2, 0.6);
  opening.today.shim.width_m = dice.between(0.005, 0.03);
  opening.today.width_m = dice.between(0.5, 1.5);
  opening.today.covering = dice.pick(['none', 'blind', 'shade', 'curtain']);
  opening.today.pockets = dice.pick(['none', 'empty', 'insulated']);
  const build = dice.pick(['frame_2x4', 'frame_2x6', 'balloon', 'brick_cavity', 'solid_masonry']);
  opening.today.wall = { build, cavity: dice.pick(['filled', 'empty']) };
  opening.today.glazing.storm = dice.pick(['none', 'clear']);
  opening.today.glazing.coating_kind_2 = dice.pick(['same', 'hard', 'one_silver']);
  opening.today.tilt_deg = dice.pick([90, 90, dice.between(15, 90)]);
  opening.room.facade = dice.pick(['windward', 'side', 'lee']);
  opening.room.heater = dice.pick(['none', 'radiator', 'register']);
  opening.room.storey = dice.pick(['by_height', 'ground', 'upstairs', 'attic', 'basement']);
  opening.today.shim.fill = dice.pick(['open', 'partly_foamed', 'foamed']);
  opening.room.sill_depth_m = dice.between(0, 0.4);
  file.weather = { outside_c: dice.between(-35, 15), wind_m_s: dice.between(0, 15),
    altitude_m: dice.between(0, 3000) };
  return { ...file, openings: [opening], selected: 0 };
}

/** Known frame and panes keep a label quick; now and then an impossible one. */
const label = (dice) => ({
  units: 'si',
  u: dice.pick([dice.between(1.2, 3.2), dice.between(1.2, 3.2), dice.between(0.1, 12)]),
  shgc: dice.between(0.15, 0.65),
  ...(dice.below(3) === 0 ? { light: dice.between(0.2, 0.7) } : {}),
  ...(dice.below(3) === 0 ? { air: dice.between(0.1, 1.5) } : {}),
  frame: dice.pick(['wood', 'vinyl', 'aluminium']),
  panes: 1 + dice.below(3),
  builds: 1 + dice.below(2),
});

const spoken = ['old', 'new', 'Wood', 'vinyl', 'single glass', 'double', 'triple', 'no', 'storm',
  'low-e', 'argon', 'loose', 'painted shut', 'weights', 'insert,', '36 x 60 in', 'zebra', 'ümlaut',
  'without', 'film', 'room side coat', 'bronze', 'fogged', 'foamed', 'upstairs', 'attic'];
const words = (dice) => ({ text: many(1 + dice.below(9), () => dice.pick(spoken)).join(' ') });

const kinds = { glazing, comfort, room, leak, moisture, thermography, year, label, words, find_out: findOut };

/** Something that a typing hand or a broken program would send. */
function spoiled(dice, make) {
  const object = make(dice);
  const key = dice.pick(Object.keys(object));
  const spoil = dice.pick([
    () => delete object[key],
    () => (object[key] = null),
    () => (object[key] = 'many'),
    () => (object[key] = -1e300),
    () => (object[key] = [[]]),
    () => (object[`${key}x`] = 1),
  ]);
  spoil();
  return object;
}

const awkwardTexts = [
  '', ' ', 'null', 'true', '0', '"glazing"', '[]', '[1,2', '{', '{}', '{}{}', '{"a":}', '{"a":1,}',
  '{"a":1e999}', '{"a":-1e-999}', '{"a":01}', '{"a":NaN}', '{"a":"\\ud800"}', '{"a":1,"a":2}',
  '\ufeff{}', '{\n\t"air_c": "warm"\n}', '['.repeat(100000), '{"a":'.repeat(40), '[' + '0,'.repeat(99999),
];

function* examples() {
  for (const name of readdirSync(examplesFolder).filter((file) => file.endsWith('.json')).sort()) {
    const { question, cases } = JSON.parse(readFileSync(new URL(name, examplesFolder), 'utf8'));
    for (const { ask } of cases) yield { question, text: JSON.stringify(ask) };
  }
}

function* generated(dice) {
  for (const [question, make] of Object.entries(kinds)) {
    for (let i = 0; i < 20; ++i) yield { question, text: JSON.stringify(make(dice)) };
    for (let i = 0; i < 8; ++i) yield { question, text: JSON.stringify(spoiled(dice, make)) };
  }
  for (const accuracy of ['draft', 'draft', 'draft', 'normal', 'normal', 'fine']) {
    for (const columns of [1, 4, 9]) {
      yield { question: 'section', text: JSON.stringify(section(dice, columns, accuracy)) };
    }
    yield { question: 'section', text: JSON.stringify(spoiled(dice, (d) => section(d, 2, accuracy))) };
  }
  for (let i = 0; i < 6; ++i) yield { question: 'house', text: JSON.stringify(house(dice)) };
  for (let i = 0; i < 4; ++i) yield { question: 'house', text: JSON.stringify(spoiled(dice, house)) };
}

function* awkward() {
  const questions = [...Object.keys(kinds), 'section', 'house', 'weather', ''];
  for (const [i, text] of awkwardTexts.entries()) {
    for (const question of [questions[i % questions.length], questions[(i * 3 + 1) % questions.length]]) {
      if (question !== '') yield { question, text };
    }
  }
  yield { question: 'house', text: readFileSync(demoHouse, 'utf8') };
}

export function* corpus(seed) {
  yield* examples();
  yield* awkward();
  yield* generated(new Dice(seed));
}
