// SPDX-License-Identifier: MIT
// Draughtsman's hatches, in CSS px so that they keep their size while the drawing is zoomed.
// Each answers with the cover (0…1) of its ink at p. Kinds are numbered as in app/hatch.hpp.

float edge_px; // half a device px: softness of every stroke, set by hatch()

float stroke(float distance, float width) {
    return 1.0 - smoothstep(0.5 * width - edge_px, 0.5 * width + edge_px, distance);
}

/// Distance to the nearest of lines that are `apart` along s.
float to_line(float s, float apart) {
    return abs(mod(s + 0.5 * apart, apart) - 0.5 * apart);
}

/// Two numbers 0…1 that belong to a lattice place.
vec2 scatter(ivec2 place) {
    uint h = uint(place.x) * 0x9E3779B9u ^ uint(place.y) * 0x85EBCA6Bu;
    h = (h ^ (h >> 15)) * 0x2C1B3C6Du;
    h = (h ^ (h >> 12)) * 0x297A2D39u;
    h ^= h >> 15;
    return vec2(float(h & 0xFFFFu), float(h >> 16)) / 65535.0;
}

/// Lines across `way`: its cosine and sine, how far they are apart, their width. They may waver in two
/// waves, `wave`: height and 2π / length of each; where there is a second one, as in wood, every third
/// line is heavier by its height.
float lines(vec2 p, vec4 way, vec4 wave) {
    vec2 q = vec2(way.x * p.x + way.y * p.y, way.x * p.y - way.y * p.x);
    vec2 at = wave.yw * q.x + vec2(0.0, 1.7);
    float s = q.y + dot(wave.xz, sin(at));
    float lean = dot(wave.xz * wave.yw, cos(at));
    float heavy = step(mod(floor(s / way.z + 0.5), 3.0), 0.5);
    return stroke(to_line(s, way.z) / sqrt(1.0 + lean * lean), way.w + wave.z * heavy);
}

/// Distance from p to the nearest point of a staggered lattice.
float to_lattice(vec2 p, float apart) {
    vec2 cell = vec2(apart, apart * 0.8660254);
    float row = floor(p.y / cell.y + 0.5);
    float shift = 0.5 * apart * mod(row, 2.0);
    return length(vec2(to_line(p.x + shift, apart), p.y - row * cell.y));
}

/// Fine irregular points: plaster.
float stipple(vec2 p, float apart, float radius) {
    ivec2 place = ivec2(floor(p / apart));
    vec2 chance = scatter(place);
    vec2 point = (vec2(place) + 0.25 + 0.5 * chance) * apart;
    return chance.x * chance.y > 0.5 ? 0.0 : stroke(distance(p, point), 2.0 * radius);
}

/// Layers of a panel, each broken into dashes.
float layers(vec2 p, float apart, float dash) {
    float row = floor(p.x / apart + 0.5);
    float broken = step(to_line(p.y + 0.5 * dash * mod(row, 2.0), dash), 0.36 * dash);
    return stroke(to_line(p.x, apart), 0.8) * broken;
}

/// Each pattern's code once, its numbers by kind: software that plays a card translates all of it, and
/// takes its time.
float hatch(int kind, vec2 p, float dpr) {
    edge_px = 0.5 / dpr;
    const vec4 slant = vec4(0.70711, 0.70711, 9.0, 0.7), back = vec4(1.0, -1.0, 1.0, 1.0);
    const vec4 wavering = vec4(1.5, 0.085, 0.6, 0.21);
    vec4 way = vec4(0.0), wave = vec4(0.0), other_way = vec4(0.0), other_wave = vec4(0.0);
    vec3 lattice = vec3(0.0); // how far apart, radius of rings, width of strokes
    switch (kind) {
    case 1: way = vec4(0.75181, 0.65938, 5.5, 0.55), wave = wavering; break;         // softwood
    case 2: way = vec4(0.75181, -0.65938, 4.0, 0.55), wave = wavering; break;        // hardwood
    case 3: way = slant, other_way = slant * back; break;                            // plastic
    case 4: way = vec4(slant.xy, 3.0, 1.0); break;                                   // metal
    case 5: return stipple(p, 3.6, 0.6);                                             // gypsum
    case 6: return layers(p, 3.5, 16.0);                                             // panel
    case 7: way = vec4(0.49757, 0.86742, 7.0, 0.7); break;                           // siding
    case 8: way = vec4(1.0, 0.0, 9.0, 0.8), wave.xy = vec2(3.2, 0.41888); break;     // insulation
    case 9:                                                                          // stuffing
        way = vec4(0.87758, 0.47943, 8.0, 0.7), wave.xy = vec2(2.4, 0.5712);
        other_way = vec4(0.82534, -0.56464, 9.0, 0.7), other_wave.xy = vec2(2.0, 0.7854);
        break;
    case 10: lattice = vec3(5.0, 0.0, 1.9); break;                                   // foam
    case 11: lattice = vec3(6.5, 2.1, 0.8); break;                                   // backer rod
    case 12: way = vec4(slant.xy, 2.6, 0.9), other_way = way * back; break;          // sealant
    case 13: lattice = vec3(2.8, 0.0, 1.4); break;                                   // desiccant
    }
    if (lattice.x > 0.0) return stroke(abs(to_lattice(p, lattice.x) - lattice.y), lattice.z);
    float cover = 0.0; // else left clear
    for (int i = 0; i < 2 && way.z > 0.0; i++) {
        cover = max(cover, lines(p, way, wave));
        way = other_way;
        wave = other_wave;
    }
    return cover;
}
