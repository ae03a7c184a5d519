package dev.waterjet.pierce;

import dev.waterjet.evidence.Caution;
import dev.waterjet.evidence.Estimate;
import dev.waterjet.feed.FeedModel;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.material.MaterialClass;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Units;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import javax.measure.quantity.Time;

/**
 * Chooses how to pierce, by the trait of the material, its thickness and the shop's practice.
 *
 * <ul>
 *   <li>Ductile and soft plates: standing still, or moving where there is room and it saves more than a second.
 *   <li>Brittle and laminated plates: as the ductile ones if their strength is known to bear the pressure in the blind hole;
 *       else at low pressure with the abrasive first; and if even the pump's lowest pressure is too high, through a drilled
 *       hole.
 * </ul>
 */
public final class PierceSelector implements Serializable {

    private static final long serialVersionUID = 1L;

    /** Least time that makes it worth to move, in s. Common practice. */
    private static final double WORTH_MOVING_S = 1;

    /** Room that a moving pierce takes: bores of the focusing tube. Common practice. */
    private static final double MOVING_BORES = 4;

    private final FeedModel model;
    private final PierceSettings practice;

    private final EnumMap<PierceMethod, PierceModel> timed;

    private PierceSelector(FeedModel model, PierceSettings practice, Map<PierceMethod, PierceModel> timed) {
        this.model = Objects.requireNonNull(model, "model");
        this.practice = Objects.requireNonNull(practice, "practice");
        this.timed = new EnumMap<>(PierceMethod.class);
        this.timed.putAll(timed);
    }

    /**
     * Piercing with times derived from a feed model.
     *
     * @param model the feed model
     * @param practice what the shop can do and knows
     * @return the chooser
     */
    public static PierceSelector of(FeedModel model, PierceSettings practice) {
        return new PierceSelector(model, practice, Map.of());
    }

    /**
     * This chooser with a law that the shop has timed for itself, in place of the derived one.
     *
     * @param way the way it was timed in
     * @param law the law, for the jet and the material that will be asked about
     * @return the chooser with that law
     */
    public PierceSelector withModel(PierceMethod way, PierceModel law) {
        Map<PierceMethod, PierceModel> more = new EnumMap<>(timed);
        more.put(way, law);
        return new PierceSelector(model, practice, more);
    }

    private Estimate<Time> time(PierceMethod way, AbrasiveJet jet, Workpiece piece) {
        PierceModel own = timed.get(way);
        PierceModel law = own == null ? PierceModel.derived(model, jet, piece, way == PierceMethod.MOVING) : own;
        return law.time(piece.thickness());
    }

    /**
     * The way to pierce a plate.
     *
     * @param jet the jet as it will cut
     * @param piece the plate
     * @return the way, its pressure and time, and why
     */
    public Pierce choose(AbrasiveJet jet, Workpiece piece) {
        MaterialClass trait = piece.material().materialClass();
        if (trait == MaterialClass.DUCTILE || trait == MaterialClass.SOFT) {
            return atFullPressure(jet, piece, "a " + word(trait) + " plate bears the full pressure");
        }
        double fullPa = jet.water().pressureSi();
        if (practice.isStrengthKnown() && practice.safePressureSi() >= fullPa) {
            return atFullPressure(jet, piece, "half of the supply pressure lies below the strength of the plate");
        }
        if (practice.isStrengthKnown() && practice.safePressureSi() < practice.minimumPressureSi()) {
            return drilled(fullPa);
        }
        return atLowPressure(jet, piece);
    }

    private Pierce atFullPressure(AbrasiveJet jet, Workpiece piece, String why) {
        Estimate<Time> standing = time(PierceMethod.STATIONARY, jet, piece);
        Estimate<Time> moving = time(PierceMethod.MOVING, jet, piece);
        double room = MOVING_BORES * jet.head().tube().exitBoreSi();
        boolean worth = standing.si() - moving.si() > WORTH_MOVING_S;
        double pressurePa = jet.water().pressureSi();
        if (worth && practice.pierceClearanceSi() >= room) {
            return Pierce.of(
                    PierceMethod.MOVING,
                    pressurePa,
                    moving,
                    0,
                    why + ", and moving saves " + seconds(standing.si() - moving.si()),
                    moving.cautions());
        }
        String still =
                worth ? "; there is no room of " + millimetres(room) + " to move in" : "; moving would save little";
        return Pierce.of(PierceMethod.STATIONARY, pressurePa, standing, 0, why + still, standing.cautions());
    }

    private Pierce atLowPressure(AbrasiveJet jet, Workpiece piece) {
        boolean known = practice.isStrengthKnown();
        double pressurePa =
                Math.min(jet.water().pressureSi(), known ? practice.safePressureSi() : practice.minimumPressureSi());
        AbrasiveJet gentle = jet.withPressure(Kind.PRESSURE.of(pressurePa));
        Estimate<Time> time = time(PierceMethod.LOW_PRESSURE, gentle, piece);
        List<Caution> cautions = new ArrayList<>(time.cautions());
        if (!known) {
            cautions.add(Caution.warning(
                    "strength-unknown",
                    "half of the pressure must lie below the strength that keeps this plate whole, which is not known;"
                            + " try on scrap or drill the hole"));
        }
        String why = known
                ? "about half of the pressure stands in the blind hole, and the plate bears "
                        + megapascals(practice.strengthSi())
                : "a " + word(piece.material().materialClass()) + " plate of unknown strength gets the pump's lowest pressure";
        return Pierce.of(PierceMethod.LOW_PRESSURE, pressurePa, time, practice.rampSi(), why, cautions);
    }

    private Pierce drilled(double fullPa) {
        return Pierce.of(
                PierceMethod.PRE_DRILLED,
                fullPa,
                Estimate.of(Kind.TIME, 0, 0),
                practice.drillSi(),
                "even the pump's lowest pressure, " + megapascals(practice.minimumPressureSi())
                        + ", may part or crack a plate that bears " + megapascals(practice.strengthSi()),
                List.of());
    }

    private static String word(MaterialClass trait) {
        return trait.name().toLowerCase(Locale.ROOT);
    }

    private static String seconds(double s) {
        return QuantityText.print(Kind.TIME, Kind.TIME.of(s), Units.SECOND, 2);
    }

    private static String millimetres(double m) {
        return QuantityText.print(Kind.LENGTH, Kind.LENGTH.of(m), Units.MILLIMETRE, 2);
    }

    private static String megapascals(double pa) {
        return QuantityText.print(Kind.PRESSURE, Kind.PRESSURE.of(pa), Units.MEGAPASCAL, 3);
    }
}
