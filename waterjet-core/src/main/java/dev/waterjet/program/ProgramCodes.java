package dev.waterjet.program;

import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.io.InvalidObjectException;
import java.io.ObjectInputStream;
import java.io.Serializable;
import java.util.Collection;
import java.util.Collections;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;

/**
 * Machine codes of a part program: the M codes that switch the jet on and off, and M codes of other purpose.
 *
 * <p>No standard assigns codes to a jet. The defaults are M3 and M5, which ISO 6983-1 assigns to the start and stop of a
 * spindle: see the machine's manual.
 */
public final class ProgramCodes implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    private static final int MAX_CODE = 9999;

    private static final ProgramCodes DEFAULTS = new ProgramCodes(new Values(3, 5, Set.of(), false));

    /** Checked content, and the serial form. */
    private record Values(int jetOn, int jetOff, Set<Integer> passThrough, boolean allowsOpenContours)
            implements Serializable {

        private static final long serialVersionUID = 1L;

        Values {
            code("code for jet on", jetOn);
            code("code for jet off", jetOff);
            if (jetOn == jetOff) {
                Require.above("code for jet off", jetOff, jetOn, Units.ONE, "any code but that for jet on");
            }
            passThrough = Collections.unmodifiableSet(new TreeSet<>(passThrough));
            passThrough.forEach(code -> code("code to pass through", code));
        }

        private static void code(String name, int code) {
            Require.between(name, code, 0, MAX_CODE, Units.ONE, "");
        }

        private Object readResolve() {
            return new ProgramCodes(this);
        }
    }

    private final transient Values values;

    private ProgramCodes(Values values) {
        this.values = values;
    }

    /** {@return M3 for jet on, M5 for jet off, no other codes, every cut a closed contour} */
    public static ProgramCodes defaults() {
        return DEFAULTS;
    }

    /**
     * Returns these codes with another one for jet on.
     *
     * @param code number after M, 0 to 9999
     * @return the codes
     */
    public ProgramCodes withJetOn(int code) {
        return new ProgramCodes(new Values(code, values.jetOff, values.passThrough, values.allowsOpenContours));
    }

    /**
     * Returns these codes with another one for jet off.
     *
     * @param code number after M, 0 to 9999
     * @return the codes
     */
    public ProgramCodes withJetOff(int code) {
        return new ProgramCodes(new Values(values.jetOn, code, values.passThrough, values.allowsOpenContours));
    }

    /**
     * Returns these codes, and others that pass through unchanged because they neither move the head nor switch the jet.
     *
     * @param codes numbers after M, 0 to 9999
     * @return the codes
     */
    public ProgramCodes withPassThrough(Collection<Integer> codes) {
        Set<Integer> all = new TreeSet<>(values.passThrough);
        all.addAll(codes);
        return new ProgramCodes(new Values(values.jetOn, values.jetOff, all, values.allowsOpenContours));
    }

    /**
     * Returns these codes for programs whose cuts need not close, such as trimming.
     *
     * @return the codes
     */
    public ProgramCodes withOpenContours() {
        return new ProgramCodes(new Values(values.jetOn, values.jetOff, values.passThrough, true));
    }

    /** {@return the number after M that switches the jet on} */
    public int jetOn() {
        return values.jetOn;
    }

    /** {@return the number after M that switches the jet off} */
    public int jetOff() {
        return values.jetOff;
    }

    /** {@return the numbers after M that pass through, in rising order, unmodifiable} */
    public Set<Integer> passThrough() {
        return values.passThrough;
    }

    /** {@return whether every cut may be open} */
    public boolean allowsOpenContours() {
        return values.allowsOpenContours;
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("program codes")
                .put("jet_on", jetOn())
                .put("jet_off", jetOff())
                .put(
                        "pass_through",
                        passThrough().stream().map(code -> "M" + code).toList())
                .put("open_contours", allowsOpenContours())
                .map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof ProgramCodes that && values.equals(that.values);
    }

    @Override
    public int hashCode() {
        return values.hashCode();
    }

    @Override
    public String toString() {
        return "jet on M" + jetOn() + ", off M" + jetOff();
    }

    private Object writeReplace() {
        return values;
    }

    private void readObject(ObjectInputStream in) throws InvalidObjectException {
        throw new InvalidObjectException("read through its values");
    }
}
