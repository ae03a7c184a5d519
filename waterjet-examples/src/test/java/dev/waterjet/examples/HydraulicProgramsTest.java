package dev.waterjet.examples;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Test;

class HydraulicProgramsTest {

    @Test
    void waterPrintsPropertiesInSi() {
        Ran ran = Ran.of(
                "water", "--absolute-pressure", "100 MPa..400 MPa step 100 MPa", "--temperature", "20 C", "--csv");

        assertThat(ran.status()).isZero();
        assertThat(ran.out())
                .startsWith(
                        "temperature_K,absolute_pressure_Pa,density_kg_per_m3,sound_speed_m_per_s,enthalpy_J_per_kg,"
                                + "entropy_J_per_kg_K,isobaric_heat_capacity_J_per_kg_K,viscosity_Pa_s\n");
        List<CSVRecord> rows = ran.rows();
        assertThat(rows).hasSize(4);
        // computed from IAPWS-95 outside this project
        assertThat(number(rows.get(3), "density_kg_per_m3")).isCloseTo(1129.057, within(5e-4));
        assertThat(number(rows.get(3), "sound_speed_m_per_s")).isCloseTo(2099.74, within(5e-3));
    }

    @Test
    void waterRefusesIceInOneLine() {
        Ran ran = Ran.of("water", "--absolute-pressure", "800 MPa", "--temperature", "10 C");

        assertThat(ran.status()).isEqualTo(2);
        assertThat(ran.err().strip().lines()).hasSize(1);
        assertThat(ran.err()).contains("at least 13.57 °C");
        assertThat(Ran.of("water", "--absolute-pressure", "800 MPa", "--temperature", "10 C", "--metastable")
                        .status())
                .isZero();
    }

    @Test
    void jetPrintsThreeSpeedsAtAGaugePressure() {
        Ran ran = Ran.of(
                "jet",
                "--pressure",
                "399.898675 MPa",
                "--temperature",
                "20 C",
                "--orifice",
                "0.3 mm",
                "--discharge-coefficient",
                "0.7",
                "--csv");

        assertThat(ran.out())
                .startsWith(
                        "temperature_K,gauge_pressure_Pa,orifice_m,discharge_coefficient,incompressible_speed_m_per_s,"
                                + "tait_speed_m_per_s,isentropic_speed_m_per_s,exit_temperature_K,mass_flow_kg_per_s,"
                                + "volume_flow_m3_per_s,power_W,reaction_force_N\n");
        CSVRecord row = ran.rows().get(0);
        assertThat(number(row, "gauge_pressure_Pa")).isCloseTo(399_898_675, within(1e-6));
        assertThat(number(row, "isentropic_speed_m_per_s")).isCloseTo(864.085, within(5e-4));
        assertThat(number(row, "exit_temperature_K")).isCloseTo(283.65, within(0.05));
        double bernoulli = Math.sqrt(2 * (400e6 - 101325) / 998.207);
        assertThat(number(row, "incompressible_speed_m_per_s")).isCloseTo(bernoulli, within(1e-3));
        assertThat(number(row, "volume_flow_m3_per_s"))
                .isCloseTo(0.7 * Math.PI / 4 * 0.09e-6 * bernoulli, within(1e-9));
        assertThat(number(row, "reaction_force_N"))
                .isCloseTo(number(row, "mass_flow_kg_per_s") * number(row, "isentropic_speed_m_per_s"), within(1e-9));
        assertThat(Ran.of("jet", "--orifice", "0.2 mm..0.4 mm step 0.1 mm", "--csv")
                        .rows())
                .hasSize(36);
    }

    @Test
    void vesselPrintsStressAndEnergyAndJudgesNothing() {
        Ran ran = Ran.of(
                "vessel",
                "--pressure",
                "380 MPa..399.898675 MPa step 19.898675 MPa",
                "--diameter-ratio",
                "3",
                "--yield-strength",
                "1000 MPa",
                "--csv");

        assertThat(ran.status()).as(ran.err()).isZero();
        assertThat(ran.out())
                .startsWith(
                        "gauge_pressure_Pa,diameter_ratio,hoop_stress_bore_Pa,tresca_bore_Pa,first_yield_pressure_Pa,"
                                + "full_plastic_pressure_Pa,stored_energy_J_per_m3\n");
        CSVRecord row = ran.rows().get(0);
        // closed forms of Lame and Tresca
        assertThat(number(row, "hoop_stress_bore_Pa")).isCloseTo(475e6, within(1.0));
        assertThat(number(row, "tresca_bore_Pa")).isCloseTo(855e6, within(1.0));
        assertThat(number(row, "first_yield_pressure_Pa")).isCloseTo(444.4444444e6, within(10.0));
        assertThat(number(row, "full_plastic_pressure_Pa")).isCloseTo(1098.6122887e6, within(10.0));
        // IAPWS-95 in an independent program, 400 MPa absolute and 20 C
        assertThat(number(ran.rows().get(1), "stored_energy_J_per_m3")).isCloseTo(21_602_250.0, within(50.0));
        assertThat(Ran.of("vessel").out()).contains("no assessment", "maker");
        assertThat(Ran.of("vessel", "--diameter-ratio", "1").status()).isEqualTo(2);
    }

    @Test
    void pumpWarmsAndWorks() {
        CSVRecord row =
                Ran.of("pump", "--pressure", "399.898675 MPa", "--csv").rows().get(0);

        assertThat(number(row, "gauge_pressure_Pa")).isCloseTo(399_898_675, within(1e-6));
        assertThat(number(row, "isentropic_work_J_per_kg")).isCloseTo(374_711, within(0.5));
        assertThat(number(row, "outlet_temperature_K")).isCloseTo(303.93, within(0.005));
        assertThat(number(row, "motor_power_W")).isCloseTo(number(row, "water_power_W") / 0.65, within(1e-6));
        assertThat(Ran.of("pump", "--overall-efficiency", "1.2").err()).contains("overall efficiency is 1.2");
        // IAPWS-95 in an independent program: rated over isentropic power at 400 MPa gauge 1.0691494
        CSVRecord rated =
                Ran.of("pump", "--pressure", "400 MPa", "--csv").rows().get(0);
        assertThat(number(rated, "rated_power_W") / number(rated, "water_power_W"))
                .isCloseTo(1.0691494, within(1e-6));
    }

    @Test
    void pumpPrintsTheRippleOfCompressedWater() {
        CSVRecord triplex = Ran.of(
                        "pump",
                        "--kind",
                        "direct-drive",
                        "--plungers",
                        "3",
                        "--dead-volume",
                        "0.5",
                        "--speed",
                        "600 1/min",
                        "--flow",
                        "3 L/min",
                        "--pressure",
                        "379.898675 MPa",
                        "--csv")
                .rows()
                .get(0);
        // IAPWS-95 and crank kinematics in an independent program, rod ratio 0.2
        assertThat(number(triplex, "flow_ripple")).isCloseTo(1.069556, within(1e-5));
        assertThat(number(triplex, "fluctuating_volume_m3"))
                .isCloseTo(0.0372633 * 5e-6 * 998.207 / number(triplex, "outlet_density_kg_per_m3"), within(1e-12));

        CSVRecord intensifier = Ran.of("pump", "--kind", "intensifier", "--pressure", "380 MPa", "--csv")
                .rows()
                .get(0);
        double strokeS = 1e-4 / (3.8 / 60_000);
        double interruptionS = number(intensifier, "fluctuating_volume_m3") / (3.8 / 60_000) * 1119.165 / 998.207;
        assertThat(number(intensifier, "flow_ripple")).isCloseTo(1 / (1 - interruptionS / strokeS), within(1e-4));
        assertThat(Ran.of("pump", "--kind", "direct-drive", "--dead-volume", "20")
                        .err())
                .contains("dead volume");
        assertThat(Ran.of("pump", "--kind", "windmill").status()).isEqualTo(2);
    }

    @Test
    void lineLosesLessInAWiderBore() {
        List<CSVRecord> rows =
                Ran.of("line", "--bore", "2 mm..8 mm step 1 mm", "--csv").rows();

        for (int i = 1; i < rows.size(); i++) {
            assertThat(number(rows.get(i), "loss_Pa")).isLessThan(number(rows.get(i - 1), "loss_Pa"));
        }
        assertThat(Ran.of("line", "--friction", "haaland", "--roughness", "3 um")
                        .status())
                .isZero();
    }

    @Test
    void attenuatorGrowsAsTheRippleShrinks() {
        List<CSVRecord> rows = Ran.of("attenuator", "--ripple", "5 MPa..10 MPa step 5 MPa", "--csv")
                .rows();

        // nearly in inverse proportion: water softens as its pressure falls
        double twice = 2 * number(rows.get(1), "volume_m3");
        assertThat(number(rows.get(0), "volume_m3")).isBetween(twice, 1.01 * twice);
        assertThat(Ran.of("attenuator", "--diameter-ratio", "0.9").err())
                .contains("diameter ratio of the attenuator is 0.9");
        assertThat(rows.get(0).isMapped("gauge_pressure_Pa")).isTrue();
    }

    @Test
    void gaugePressureOfZeroIsRefused() {
        for (String program : List.of("jet", "pump", "line", "attenuator")) {
            Ran ran = Ran.of(program, "--pressure", "0 MPa");
            assertThat(ran.status()).as(program).isEqualTo(2);
            assertThat(ran.err()).as(program).contains("gauge pressure").contains("must be above 0 MPa");
        }
    }

    private static double number(CSVRecord row, String column) {
        return Double.parseDouble(row.get(column));
    }
}
