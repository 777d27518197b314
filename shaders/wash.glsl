// SPDX-License-Identifier: MIT
// Temperature to colour: seven stops, hinged between the fourth and the fifth. Same stops and same
// interpolation as view::TemperatureScale, so that a legend and the picture agree.
uniform vec3 stops[7];
uniform vec3 scale_c; // low, hinge (the dew point), high

vec3 along(int first, int count, float part) {
    float place = clamp(part, 0.0, 1.0) * float(count - 1);
    int below = min(int(place), count - 2);
    return mix(stops[first + below], stops[first + below + 1], place - float(below));
}

/// `slope` in K per device px softens the jump at the hinge over one pixel.
vec3 wash(float t_c, float slope) {
    vec3 cold = along(0, 4, (t_c - scale_c.x) / max(scale_c.y - scale_c.x, 1e-6));
    vec3 warm = along(4, 3, (t_c - scale_c.y) / max(scale_c.z - scale_c.y, 1e-6));
    return mix(cold, warm, clamp((t_c - scale_c.y) / max(slope, 1e-7) + 0.5, 0.0, 1.0));
}
