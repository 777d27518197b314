// SPDX-License-Identifier: MIT
// Temperature to colour, looked up in the colours of view::TemperatureScale, so that a legend and the
// picture agree: the cold side of the hinge first, then the warm one (app/field_painter.cpp). The jump
// between them lies under the line of the dew point.
uniform sampler2D wash_sheet; // a: 1 where dark ink reads on it, 0 where light ink does
uniform vec4 scale;           // low and hinge in °C, then one by the K of each side

const float last = 1023.0; // texel of a side

vec4 wash(float t_c) {
    bool cold = t_c < scale.y;
    float share = cold ? (t_c - scale.x) * scale.z : (t_c - scale.y) * scale.w;
    int at = int(clamp(share, 0.0, 1.0) * last + 0.5);
    return texelFetch(wash_sheet, ivec2(at, cold ? 0 : 1), 0);
}
