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

vec2 turned(vec2 p, float radians) {
    float c = cos(radians), s = sin(radians);
    return vec2(c * p.x + s * p.y, c * p.y - s * p.x);
}

/// Two numbers 0…1 that belong to a lattice place.
vec2 scatter(ivec2 place) {
    uint h = uint(place.x) * 0x9E3779B9u ^ uint(place.y) * 0x85EBCA6Bu;
    h = (h ^ (h >> 15)) * 0x2C1B3C6Du;
    h = (h ^ (h >> 12)) * 0x297A2D39u;
    h ^= h >> 15;
    return vec2(float(h & 0xFFFFu), float(h >> 16)) / 65535.0;
}

/// Year rings cut slantwise: wavering lines, every third one heavier.
float grain(vec2 p, float radians, float apart) {
    vec2 q = turned(p, radians);
    float s = q.y + 1.5 * sin(q.x * 0.085) + 0.6 * sin(q.x * 0.21 + 1.7);
    float heavy = step(mod(floor(s / apart + 0.5), 3.0), 0.5);
    return stroke(to_line(s, apart), mix(0.55, 1.15, heavy));
}

float diagonal(vec2 p, float radians, float apart, float width) {
    return stroke(to_line(turned(p, radians).y, apart), width);
}

/// Rows of waves: batts.
float waves(vec2 p, float apart, float length_px, float height_px, float width) {
    float k = 6.2831853 / length_px;
    float s = p.y + height_px * sin(k * p.x);
    float lean = k * height_px * cos(k * p.x);
    return stroke(to_line(s, apart) / sqrt(1.0 + lean * lean), width);
}

/// Loose tufts stuffed in: two families of waves that cross.
float tufts(vec2 p) {
    float a = waves(turned(p, 0.5), 8.0, 11.0, 2.4, 0.7);
    return max(a, waves(turned(p, -0.6), 9.0, 8.0, 2.0, 0.7));
}

/// Distance from p to the nearest point of a staggered lattice.
float to_lattice(vec2 p, float apart) {
    vec2 cell = vec2(apart, apart * 0.8660254);
    float row = floor(p.y / cell.y + 0.5);
    float shift = 0.5 * apart * mod(row, 2.0);
    return length(vec2(to_line(p.x + shift, apart), p.y - row * cell.y));
}

float dots(vec2 p, float apart, float radius) {
    return stroke(to_lattice(p, apart), 2.0 * radius);
}

float rings(vec2 p, float apart, float radius) {
    return stroke(abs(to_lattice(p, apart) - radius), 0.8);
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

float hatch(int kind, vec2 p, float dpr) {
    edge_px = 0.5 / dpr;
    switch (kind) {
    case 1: return grain(p, 0.72, 5.5);                                          // softwood
    case 2: return grain(p, -0.72, 4.0);                                         // hardwood
    case 3: return max(diagonal(p, 0.7854, 9.0, 0.7), diagonal(p, -0.7854, 9.0, 0.7)); // plastic
    case 4: return diagonal(p, 0.7854, 3.0, 1.0);                                // metal
    case 5: return stipple(p, 3.6, 0.6);                                         // gypsum
    case 6: return layers(p, 3.5, 16.0);                                         // panel
    case 7: return diagonal(p, 1.05, 7.0, 0.7);                                  // siding
    case 8: return waves(p, 9.0, 15.0, 3.2, 0.8);                                // insulation
    case 9: return tufts(p);                                                     // stuffing
    case 10: return dots(p, 5.0, 0.95);                                          // foam
    case 11: return rings(p, 6.5, 2.1);                                          // backer rod
    case 12: return max(diagonal(p, 0.7854, 2.6, 0.9), diagonal(p, -0.7854, 2.6, 0.9)); // sealant
    case 13: return dots(p, 2.8, 0.7);                                           // desiccant
    default: return 0.0;                                                         // left clear
    }
}
