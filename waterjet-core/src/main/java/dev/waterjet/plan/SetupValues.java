package dev.waterjet.plan;

import dev.waterjet.cost.Prices;
import dev.waterjet.feed.FeedModel;
import dev.waterjet.hydraulics.PumpSetting;
import dev.waterjet.jet.Abrasive;
import dev.waterjet.jet.CuttingHead;
import dev.waterjet.kerf.KerfModel;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import dev.waterjet.motion.MachineLimits;
import dev.waterjet.motion.TiltingHead;
import dev.waterjet.pierce.PierceSettings;
import dev.waterjet.quality.EdgeRequirement;
import dev.waterjet.sheet.Slats;
import java.io.Serializable;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/** Checked content of a setup, and its serial form. */
record SetupValues(
        CuttingHead head,
        PumpSetting pump,
        MachineLimits machine,
        Abrasive abrasive,
        double abrasiveFlow,
        FeedModel feedModel,
        KerfModel kerfModel,
        PierceSettings pierceSettings,
        EdgeRequirement requirement,
        double rapidSpeed,
        double rapidAcceleration,
        double pierceDelay,
        double moveDelay,
        double feedChange,
        @Nullable Slats slats,
        @Nullable Double shearStrength,
        @Nullable Prices prices,
        @Nullable TiltingHead tiltingHead)
        implements Serializable {

    SetupValues {
        Objects.requireNonNull(head, "head");
        Objects.requireNonNull(pump, "pump");
        Objects.requireNonNull(machine, "machine");
        Objects.requireNonNull(abrasive, "abrasive");
        abrasiveFlow = Require.positive("abrasive flow rate", abrasiveFlow, Units.GRAM_PER_MINUTE);
        Objects.requireNonNull(feedModel, "feedModel");
        Objects.requireNonNull(kerfModel, "kerfModel");
        Objects.requireNonNull(pierceSettings, "pierceSettings");
        Objects.requireNonNull(requirement, "requirement");
        rapidSpeed = Require.positive("rapid traverse speed", rapidSpeed, Units.MILLIMETRE_PER_MINUTE);
        rapidAcceleration =
                Require.positive("acceleration of rapid traverse", rapidAcceleration, Units.METRE_PER_SQUARE_SECOND);
        pierceDelay = Require.notNegative("delay per pierce", pierceDelay, Units.SECOND);
        moveDelay = Require.notNegative("delay per move", moveDelay, Units.SECOND);
        feedChange = Require.notNegative("change of the feed rate within a move", feedChange, Units.ONE);
        if (shearStrength != null) {
            shearStrength = Require.positive("shear strength", shearStrength, Units.MEGAPASCAL);
        }
    }

    private Object readResolve() {
        return new Setup(this);
    }

    /** Content under change. */
    static final class Draft {

        CuttingHead head;
        PumpSetting pump;
        MachineLimits machine;
        Abrasive abrasive;
        double abrasiveFlow;
        FeedModel feedModel;
        KerfModel kerfModel;
        PierceSettings pierceSettings;
        EdgeRequirement requirement;
        double rapidSpeed;
        double rapidAcceleration;
        double pierceDelay;
        double moveDelay;
        double feedChange;

        @Nullable
        Slats slats;

        @Nullable
        Double shearStrength;

        @Nullable
        Prices prices;

        @Nullable
        TiltingHead tiltingHead;

        Draft(SetupValues v) {
            head = v.head;
            pump = v.pump;
            machine = v.machine;
            abrasive = v.abrasive;
            abrasiveFlow = v.abrasiveFlow;
            feedModel = v.feedModel;
            kerfModel = v.kerfModel;
            pierceSettings = v.pierceSettings;
            requirement = v.requirement;
            rapidSpeed = v.rapidSpeed;
            rapidAcceleration = v.rapidAcceleration;
            pierceDelay = v.pierceDelay;
            moveDelay = v.moveDelay;
            feedChange = v.feedChange;
            slats = v.slats;
            shearStrength = v.shearStrength;
            prices = v.prices;
            tiltingHead = v.tiltingHead;
        }

        SetupValues values() {
            return new SetupValues(
                    head,
                    pump,
                    machine,
                    abrasive,
                    abrasiveFlow,
                    feedModel,
                    kerfModel,
                    pierceSettings,
                    requirement,
                    rapidSpeed,
                    rapidAcceleration,
                    pierceDelay,
                    moveDelay,
                    feedChange,
                    slats,
                    shearStrength,
                    prices,
                    tiltingHead);
        }
    }
}
