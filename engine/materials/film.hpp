#pragma once

namespace stillground::materials {

/// How the fluid flows in a round pipe.
enum class Regime { standing, laminar, transition, turbulent };

/// Ends of the transition [Re]: Gnielinski (2013), On heat transfer in tubes [from memory].
inline constexpr double laminar_end = 2300;
inline constexpr double turbulent_start = 4000;

/// Nusselt number of developed laminar flow under uniform heat flux, 48/11. A loop's wall gives off heat that hardly
/// changes over a pipe's diameter, whatever the temperatures: the uniform flux, not the uniform wall temperature
/// (3.657), is the nearer case. The higher values of the entrance (the first 0.05 Re Pr diameters) are left out, which
/// errs to the safe side. Source: Incropera & DeWitt, internal flow [from memory].
inline constexpr double laminar_nusselt = 4.364;

/// Nusselt number of fluid that stands: conduction and weak free convection, taken as in laminar flow so that the film
/// is continuous where the flow dies out. Assumption of our own, common practice, no source.
inline constexpr double standing_nusselt = laminar_nusselt;

/// Reynolds number of `mass_flow` [kg/s, >= 0] in one pipe of `inner_diameter` [m, > 0], `viscosity` [Pa s, > 0]: 4 m /
/// (pi d mu).
double reynolds(double mass_flow, double inner_diameter, double viscosity);

/// Re <= 0 stands; laminar to 2300, turbulent from 4000.
Regime regime(double reynolds);

/// "standing", "laminar", "transition", "turbulent".
const char* regime_name(Regime regime);

/// Darcy friction factor of a smooth pipe, (0.790 ln Re - 1.64)^-2, 3000 < Re < 5e6. Source: Petukhov (1970).
double petukhov_friction(double reynolds);

/// Nusselt number (f/8)(Re - 1000) Pr / (1 + 12.7 sqrt(f/8) (Pr^(2/3) - 1)) with `friction` the Darcy factor of a
/// smooth pipe; 3000 < Re < 5e6, 0.5 < Pr < 2000, good to about 10 %. Long pipe, viscosity of the wall not told apart.
/// Source: Gnielinski (1976).
double gnielinski(double reynolds, double prandtl, double friction);

/// Nusselt number h d / k by regime, continuous in Re: 4.364 to Re 2300, Gnielinski with Petukhov's friction from Re
/// 4000, between them linear in Re (Gnielinski 2013 [from memory]). Range as gnielinski().
double nusselt(double reynolds, double prandtl);

/// Darcy friction factor f: pressure drop = f (L/d) rho v^2/2. `relative_roughness` = roughness / inner diameter, 0 to
/// 0.05. Re > 0. Laminar 64/Re to Re 2300, Colebrook (1939) solved to round-off from Re 4000, between them linear in Re
/// as the Nusselt number (common practice, no source).
double friction_factor(double reynolds, double relative_roughness);

/// The two walls of an annulus.
enum class AnnulusWall { inner, outer };

/// Reynolds number of `mass_flow` [kg/s, >= 0] in an annulus between `inner` and `outer` diameters [m], by the
/// hydraulic diameter outer - inner: 4 m/(pi (outer + inner) mu).
double annulus_reynolds(double mass_flow, double inner, double outer, double viscosity);

/// Nusselt number h (outer - inner)/k at one wall of an annulus, the other adiabatic; `ratio` = inner/outer diameter,
/// 0.02 to 1. Laminar: developed flow under uniform flux, from the balances of momentum and energy, as
/// Reynolds, Lundberg & McCuen (1963) tabulate it; within 1e-6. Turbulent: Gnielinski's pipe value times 0.86
/// ratio^-0.16 at the inner wall, times 1 - 0.14 ratio^0.6 at the outer one: Petukhov & Roizen (1964) [from memory].
/// Between Re 2300 and 4000 linear in Re, as in a pipe.
double annulus_nusselt(double reynolds, double prandtl, double ratio, AnnulusWall wall);

/// Resistance of the film at a wall of an annulus per length, 1/(pi d h) = (outer - inner)/(pi d Nu k) [K m/W], d that
/// wall's diameter.
double annulus_film_resistance(double nusselt, double conductivity, double inner, double outer, AnnulusWall wall);

/// Resistance of the film inside one pipe per length, 1/(pi d h) = 1/(pi Nu k) [K m/W]; `conductivity` of the fluid
/// [W/(m K)].
double film_resistance(double nusselt, double conductivity);

/// Resistance of a pipe's wall per length, ln(d_o/d_i)/(2 pi k) [K m/W]; 0 < inner <= outer [m], `conductivity` > 0
/// [W/(m K)].
double pipe_wall_resistance(double inner_diameter, double outer_diameter, double conductivity);

}  // namespace stillground::materials
