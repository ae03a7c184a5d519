package dev.waterjet.circuit;

import dev.waterjet.evidence.Caution;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.DomainException;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Message;
import dev.waterjet.measure.NoSolutionException;
import dev.waterjet.measure.QuantityArray;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import dev.waterjet.water.WaterState;
import java.io.InvalidObjectException;
import java.io.ObjectInputStream;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Pressure;
import javax.measure.quantity.Time;

/**
 * High-pressure circuit: pumps, attenuators, supply lines, heads and valves joined at named nodes, and its pressure and flow over
 * time. The package comment states what is left out.
 *
 * <pre>{@code
 * Circuit circuit = Circuit.around(megapascals(380), Water.stable().at(megapascals(0.101325), celsius(20)))
 *         .vessel("attenuator", Attenuator.of(Kind.VOLUME.of(1e-3)))
 *         .pump("attenuator", PumpDrive.of(triplex))
 *         .line("attenuator", "head", SupplyLine.Section.ofBore(millimetres(4.8)).withLength(metres(20)))
 *         .head("head", orifice)
 *         .build();
 * Quantity<Pressure> ripple = circuit.ripple().at("head");
 * }</pre>
 */
public final class Circuit implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    private static final double MAX_REFERENCE_PA = 900e6;
    private static final int DEFAULT_REACHES = 80;
    private static final int MAX_REACHES = 2000;
    private static final int MAX_STEPS = 200_000;
    private static final double MAX_WORK = 1e8;
    private static final double LONGEST_STEP_S = 5e-4;

    /** Checked content, and the serial form. */
    private record Values(double referencePa, WaterState atRest, CircuitParts parts) implements Serializable {

        private static final long serialVersionUID = 1L;

        Values {
            referencePa = Require.positive("reference pressure of the circuit", referencePa, Units.MEGAPASCAL);
            referencePa = Require.atMost(
                    "reference pressure of the circuit", referencePa, MAX_REFERENCE_PA, Units.MEGAPASCAL, "");
            Require.atMost(
                    "pressure of the water at rest",
                    atRest.pressureSi(),
                    referencePa + IsentropeKernel.ATMOSPHERE_PA,
                    Units.MEGAPASCAL,
                    "the reference pressure");
            Objects.requireNonNull(parts, "parts");
        }

        private Object readResolve() throws InvalidObjectException {
            try {
                return new Circuit(this);
            } catch (DomainException e) {
                throw (InvalidObjectException) new InvalidObjectException(e.getMessage()).initCause(e);
            }
        }
    }

    private final transient Values values;
    private final transient CircuitWater water;

    private Circuit(Values values) {
        this.values = values;
        this.water = new CircuitWater(values.atRest, values.referencePa);
    }

    /**
     * Begins a circuit.
     *
     * @param reference gauge pressure at which wave speed and density of the lines, and the volume of vessels, are taken: the usual
     *     operating pressure, above 0 to 900 MPa
     * @param atRest water at the intake, near ambient pressure; its isentrope is that of the water in the circuit
     * @return a builder
     */
    public static CircuitBuilder around(Quantity<Pressure> reference, WaterState atRest) {
        Objects.requireNonNull(reference, "reference");
        return new CircuitBuilder(Kind.PRESSURE.si(reference), Objects.requireNonNull(atRest, "atRest"));
    }

    static Circuit of(double referencePa, WaterState atRest, CircuitParts parts) {
        return new Circuit(new Values(referencePa, atRest, parts));
    }

    /** {@return the names of the nodes} */
    public List<String> nodes() {
        return values.parts.nodes();
    }

    /**
     * Returns pressure and flow over time, from the steady state on. The line that waves take longest to pass has 80 reaches or
     * more.
     *
     * @param duration time to compute, above 0
     * @return pressure and flow at every node
     * @throws NoSolutionException if pumps, heads and relief valves have no steady state ({@code no-steady-state})
     * @throws DomainException if the run would take too many steps, or the pressure in a vessel leaves the range of 0 to 1000 MPa,
     *     as behind a pump that delivers against closed heads
     */
    public PressureHistory run(Quantity<Time> duration) {
        return run(duration, DEFAULT_REACHES);
    }

    /**
     * Returns pressure and flow over time, from the steady state on, in steps of a given fineness.
     *
     * @param duration time to compute, above 0
     * @param reaches reaches of the line that waves take longest to pass, 1 to 2000; more where the pump moves faster than that
     * @return pressure and flow at every node
     * @throws NoSolutionException as {@link #run(Quantity)}
     * @throws DomainException as {@link #run(Quantity)}, or if the number of reaches is out of range
     */
    public PressureHistory run(Quantity<Time> duration, int reaches) {
        Objects.requireNonNull(duration, "duration");
        double durationS = Require.positive("duration of the run", Kind.TIME.si(duration), Units.SECOND);
        double stepS = stepS(reaches);
        double steps = Math.ceil(durationS / stepS * (1 - 1e-12));
        double work = steps * (travelTimes() / stepS + 10 * values.parts.nodes().size());
        Require.atMost("number of steps", steps, MAX_STEPS, Units.ONE, "compute less time, or with fewer reaches");
        Require.atMost(
                "number of steps times reaches", work, MAX_WORK, Units.ONE, "compute less time, or with fewer reaches");
        return new CircuitRun(values.parts, water, stepS).history((int) steps);
    }

    /** Step of time: waves pass one reach in it. */
    double stepS(int reaches) {
        Require.between("number of reaches", reaches, 1, MAX_REACHES, Units.ONE, "");
        WaterState inLines = water.isentrope().at(water.referencePa());
        double stepS = LONGEST_STEP_S;
        for (CircuitParts.Pump pump : values.parts.pumps()) {
            stepS = Math.min(
                    stepS,
                    PumpMotion.of(pump.drive(), water.isentrope(), values.atRest.densitySi())
                            .longestStep());
        }
        double longest = 0;
        for (CircuitParts.Line line : values.parts.lines()) {
            longest = Math.max(longest, travelTime(line, inLines));
        }
        return longest > 0 ? longest / Math.max(reaches, Math.ceil(longest / stepS)) : stepS;
    }

    private static double travelTime(CircuitParts.Line line, WaterState inLines) {
        return Kind.LENGTH.si(line.section().length())
                / Kind.SPEED.si(line.section().waveSpeed(inLines));
    }

    private double travelTimes() {
        WaterState inLines = water.isentrope().at(water.referencePa());
        return values.parts.lines().stream()
                .mapToDouble(line -> travelTime(line, inLines))
                .sum();
    }

    /** A run of this circuit, to be advanced step by step. */
    CircuitRun started(double stepS) {
        CircuitRun run = new CircuitRun(values.parts, water, stepS);
        run.start();
        return run;
    }

    /**
     * Returns the pressure ripple of the settled circuit with valves as at the start, by a Fourier sum instead of steps in time.
     * Pressure changes are taken as small. It agrees with a run within about 1 % for ripples of a few % of the pressure.
     *
     * @return ripple at every node, and the frequencies of pump and lines
     * @throws NoSolutionException if the circuit does not have exactly one pump, a direct drive ({@code ripple-not-periodic}), or has
     *     no steady state
     */
    public PressureRipple ripple() {
        List<CircuitParts.Pump> pumps = values.parts.pumps();
        if (pumps.size() != 1 || !(pumps.get(0).drive() instanceof DirectDrive drive)) {
            throw new NoSolutionException(Message.of(
                    "ripple-not-periodic",
                    "ripple is computed for one direct-drive pump; compute a run over time for other pumps"));
        }
        CircuitRun run = new CircuitRun(values.parts, water, stepS(DEFAULT_REACHES));
        SteadyFlow steady = new SteadyFlow(run.nodes(), run.lines(), water.referencePa());
        steady.solve();
        PumpMotion.Crank crank = new PumpMotion.Crank(drive.pump(), water.isentrope(), values.atRest.densitySi());
        double[] ripples = new RippleKernel(run.nodes(), run.lines(), steady)
                .ripple(nodes().indexOf(pumps.get(0).node()), crank);
        Map<String, Quantity<Pressure>> byNode = new LinkedHashMap<>();
        for (int i = 0; i < ripples.length; i++) {
            byNode.put(nodes().get(i), Kind.PRESSURE.of(ripples[i]));
        }
        double[] lines =
                run.lines().stream().mapToDouble(LineWaves::quarterWaveHz).toArray();
        List<Caution> cautions = new ArrayList<>(List.of(CircuitCautions.IDEAL));
        if (lines.length > 0) {
            cautions.add(CircuitCautions.QUASI_STEADY);
        }
        cautions.addAll(PressureRipple.resonances(crank.plungerHz(), lines));
        return new PressureRipple(
                Kind.FREQUENCY.of(crank.plungerHz()), byNode, QuantityArray.ofSi(Kind.FREQUENCY, lines), cautions);
    }

    @Override
    public Map<String, Object> describe() {
        return values.parts
                .describe(Description.of("circuit")
                        .put("reference_pressure", Kind.PRESSURE, values.referencePa)
                        .put("water_at_rest", values.atRest))
                .map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Circuit that && values.equals(that.values);
    }

    @Override
    public int hashCode() {
        return values.hashCode();
    }

    @Override
    public String toString() {
        return "circuit of " + nodes().size() + " nodes about "
                + QuantityText.forPeople(Kind.PRESSURE, Kind.PRESSURE.of(values.referencePa));
    }

    private Object writeReplace() {
        return values;
    }

    private void readObject(ObjectInputStream in) throws InvalidObjectException {
        throw new InvalidObjectException("read through its values");
    }
}
