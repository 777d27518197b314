// SPDX-License-Identifier: MIT
// Lines of equal temperature: the distance to a line is the temperature still missing, divided by
// the slope; that gives one width and a soft edge at any zoom.

/// Cover (0…1) of a line `width` device px wide whose middle is `distance` device px away.
float line_cover(float distance, float width) {
    return clamp(0.5 * width + 0.5 - distance, 0.0, 1.0);
}

/// Cover of the regular isotherms. They fade where they would crowd together, and where the
/// temperature is so level that a line would spread into a blot.
float isotherms(float t_c, float slope, float step_c, float dpr) {
    float steep = max(slope, 1e-7);
    float apart_px = step_c / steep / dpr;
    float missing_c = abs(t_c - step_c * floor(t_c / step_c + 0.5));
    float visible = smoothstep(3.0, 7.0, apart_px) * (1.0 - smoothstep(600.0, 1500.0, apart_px));
    return line_cover(missing_c / steep, 1.1 * dpr) * visible;
}

/// Cover of the one isotherm at the dew point, the heaviest.
float dew_line(float t_c, float slope, float dew_c, float dpr) {
    return line_cover(abs(t_c - dew_c) / max(slope, 1e-7), 2.6 * dpr);
}
