package dev.waterjet.program;

import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.io.Serializable;
import java.util.Collection;
import java.util.HashSet;
import java.util.Objects;
import java.util.Set;

/**
 * What a machine's builder has chosen: the M codes that open and close the jet, and M codes of other purpose.
 *
 * <p>No standard says which codes open a jet. The library starts from M3 and M5, which ISO 6983-1 gives to the start and
 * stop of a spindle, since something must be chosen: see the machine's manual.
 */
public final class ProgramCodes implements Serializable {

    private static final long serialVersionUID = 1L;

    private static final int GREATEST_CODE = 9999;

    private static final ProgramCodes USUAL = new ProgramCodes(3, 5, Set.of(), false);

    private final int jetOn;
    private final int jetOff;
    private final Set<Integer> passed;
    private final boolean mayStayOpen;

    private ProgramCodes(int jetOn, int jetOff, Set<Integer> passed, boolean mayStayOpen) {
        this.jetOn = code("code for jet on", jetOn);
        this.jetOff = code("code for jet off", jetOff);
        this.passed = Set.copyOf(passed);
        this.mayStayOpen = mayStayOpen;
        if (jetOn == jetOff) {
            Require.above("code for jet off", jetOff, jetOn, Units.ONE, "any code but that for jet on");
        }
    }

    private static int code(String name, int code) {
        return (int) Require.between(name, code, 0, GREATEST_CODE, Units.ONE, "");
    }

    /**
     * M3 for jet on, M5 for jet off, no other codes, every cut a closed contour.
     *
     * @return the usual codes
     */
    public static ProgramCodes defaults() {
        return USUAL;
    }

    /**
     * These codes with another one for jet on.
     *
     * @param code number behind M, 0 to 9999
     * @return the codes
     */
    public ProgramCodes withJetOn(int code) {
        return new ProgramCodes(code, jetOff, passed, mayStayOpen);
    }

    /**
     * These codes with another one for jet off.
     *
     * @param code number behind M, 0 to 9999
     * @return the codes
     */
    public ProgramCodes withJetOff(int code) {
        return new ProgramCodes(jetOn, code, passed, mayStayOpen);
    }

    /**
     * These codes, and others that are passed over because they neither move the head nor touch the jet.
     *
     * @param codes numbers behind M, 0 to 9999
     * @return the codes
     */
    public ProgramCodes withPassThrough(Collection<Integer> codes) {
        Set<Integer> all = new HashSet<>(passed);
        codes.forEach(code -> all.add(code("code to pass over", code)));
        return new ProgramCodes(jetOn, jetOff, all, mayStayOpen);
    }

    /**
     * These codes for programs whose cuts need not close, such as trimming.
     *
     * @return the codes
     */
    public ProgramCodes withOpenContours() {
        return new ProgramCodes(jetOn, jetOff, passed, true);
    }

    /**
     * Code that opens the jet.
     *
     * @return number behind M
     */
    public int jetOn() {
        return jetOn;
    }

    /**
     * Code that closes the jet.
     *
     * @return number behind M
     */
    public int jetOff() {
        return jetOff;
    }

    /**
     * Codes that are passed over.
     *
     * @return numbers behind M, unmodifiable
     */
    public Set<Integer> passThrough() {
        return passed;
    }

    /**
     * Whether cuts need not close.
     *
     * @return true if every cut may stay open
     */
    public boolean allowsOpenContours() {
        return mayStayOpen;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof ProgramCodes that
                && jetOn == that.jetOn
                && jetOff == that.jetOff
                && mayStayOpen == that.mayStayOpen
                && passed.equals(that.passed);
    }

    @Override
    public int hashCode() {
        return Objects.hash(jetOn, jetOff, passed, mayStayOpen);
    }

    @Override
    public String toString() {
        return "jet on M" + jetOn + ", off M" + jetOff;
    }
}
