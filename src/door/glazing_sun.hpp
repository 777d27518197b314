// SPDX-License-Identifier: MIT
// The sun's part of the question `glazing`. A pane may say what it lets through and reflects of the
// sun and of light:
//   "solar":{"transmittance":0.834,"reflectance_out":0.075,"reflectance_in":0.075}, "light":{…}
// and the question how the sun stands:
//   "sun":{"angle_deg":0,"w_m2":783} or {"diffuse":true}.
// When every pane says so, the answer has `solar` (`transmittance`, `reflectance`, `absorbed` of
// each pane, `inwards`, `shgc`) and `light` (`transmittance`, `reflectance`).
#pragma once

#include "door/question.hpp"
#include "physics/solar_gain.hpp"

namespace shimlight::door {

class GlazingSun {
  public:
    /// From pane k; in the order of the panes.
    void read_pane(ObjectReader& pane);
    /// The question's own fields, once all panes are read.
    void read(ObjectReader& question);

    void answer_declared(const physics::GlazingStack& stack, Json& answer) const;
    void answer_detailed(const physics::GlazingStack& stack, const physics::GlazingSide& outside,
                         const physics::GlazingSide& inside, Json& answer) const;

  private:
    struct Band {
        physics::PanesOptics panes;
        std::size_t known = 0; ///< panes that told
    };

    static void read_band(ObjectReader& pane, std::string_view name, Band& band);
    void check_band(ObjectReader& question, std::string_view name, const Band& band) const;
    physics::StackOptics through(const Band& band) const;
    void answer_light(Json& answer) const;
    void write(const physics::StackOptics& sun, const physics::SolarGain& gain, Json& answer) const;
    bool is_told(const Band& band) const { return count_ > 0 && band.known == count_; }

    Band solar_, light_;
    std::size_t count_ = 0; ///< panes
    double angle_deg_ = 0, sun_w_m2_ = 0;
    bool diffuse_ = false;
};

} // namespace shimlight::door
