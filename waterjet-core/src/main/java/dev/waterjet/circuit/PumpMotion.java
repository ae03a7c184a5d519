package dev.waterjet.circuit;

import dev.waterjet.hydraulics.DirectDrivePump;
import dev.waterjet.measure.Kind;

/** Motion of a pump in a run. */
interface PumpMotion {

    /** Mean mass flow against an absolute pressure, in kg/s. */
    double meanFlow(double pressurePa);

    /** Mass that the pump delivers in a step against the pressure at its begin, in kg. */
    double advance(double stepS, double pressurePa);

    /** Longest step that resolves the motion, in s. */
    double longestStep();

    static PumpMotion of(PumpDrive drive, IsentropeKernel isentrope, double intakeKgPerM3) {
        return drive instanceof DirectDrive direct
                ? new Crank(direct.pump(), isentrope, intakeKgPerM3)
                : new Strokes((IntensifierDrive) drive, isentrope, intakeKgPerM3);
    }

    /** A crank that turns at constant speed. */
    final class Crank implements PumpMotion {

        private static final double TURN = 2 * Math.PI;
        private static final int STEPS_OF_PERIOD = 200;

        private final DirectDrivePump pump;
        private final IsentropeKernel isentrope;
        private final double intakeKgPerM3;
        private final double turnsPerS;
        private double angleRad = Double.NaN;

        Crank(DirectDrivePump pump, IsentropeKernel isentrope, double intakeKgPerM3) {
            this.pump = pump;
            this.isentrope = isentrope;
            this.intakeKgPerM3 = intakeKgPerM3;
            this.turnsPerS = Kind.FREQUENCY.si(pump.speed());
        }

        @Override
        public double meanFlow(double pressurePa) {
            return mass(0, TURN, pressurePa) * turnsPerS;
        }

        @Override
        public double advance(double stepS, double pressurePa) {
            if (Double.isNaN(angleRad)) {
                angleRad = quietAngle(pressurePa);
            }
            double next = angleRad + TURN * turnsPerS * stepS;
            double mass = mass(angleRad, next, pressurePa);
            angleRad = next % TURN;
            return mass;
        }

        @Override
        public double longestStep() {
            return 1 / (plungerHz() * STEPS_OF_PERIOD);
        }

        double plungerHz() {
            return pump.plungers() * turnsPerS;
        }

        double mass(double fromRad, double toRad, double pressurePa) {
            double density = isentrope.density(pressurePa);
            return density * pump.deliveredVolumeSi(fromRad, toRad, Math.max(1, density / intakeKgPerM3));
        }

        /** Mass delivered in each of equal parts of the period of a plunger. */
        double[] masses(int parts, double pressurePa) {
            double[] masses = new double[parts];
            double width = TURN / pump.plungers() / parts;
            for (int i = 0; i < parts; i++) {
                masses[i] = mass(i * width, (i + 1) * width, pressurePa);
            }
            return masses;
        }

        /**
         * Angle at which what was delivered beyond the mean flow is at its own mean. A run that starts there at the mean pressure
         * keeps that mean; from another angle it would drift for seconds.
         */
        private double quietAngle(double pressurePa) {
            double[] masses = masses(STEPS_OF_PERIOD, pressurePa);
            double mean = 0;
            for (double mass : masses) {
                mean += mass / STEPS_OF_PERIOD;
            }
            double[] excess = new double[STEPS_OF_PERIOD + 1];
            double meanExcess = 0;
            for (int i = 0; i < STEPS_OF_PERIOD; i++) {
                excess[i + 1] = excess[i] + masses[i] - mean;
                meanExcess += (excess[i] + excess[i + 1]) / (2 * STEPS_OF_PERIOD);
            }
            double width = TURN / pump.plungers() / STEPS_OF_PERIOD;
            for (int i = 0; i < STEPS_OF_PERIOD; i++) {
                double before = excess[i] - meanExcess;
                double after = excess[i + 1] - meanExcess;
                if (before * after <= 0 && before != after) {
                    return (i + before / (before - after)) * width;
                }
            }
            return 0;
        }
    }

    /** Strokes of an intensifier, one side at a time; the run starts as a side begins to deliver. */
    final class Strokes implements PumpMotion {

        private static final double STEPS_OF_REVERSAL = 40;
        private static final double STEPS_OF_STROKE = 2000;
        private static final double STROKE_END = 1 - 1e-12;

        private final IntensifierDrive drive;
        private final IsentropeKernel isentrope;
        private final double intakeKgPerM3;
        private double waitS;
        private double position = Double.NaN;

        Strokes(IntensifierDrive drive, IsentropeKernel isentrope, double intakeKgPerM3) {
            this.drive = drive;
            this.isentrope = isentrope;
            this.intakeKgPerM3 = intakeKgPerM3;
        }

        @Override
        public double meanFlow(double pressurePa) {
            return isentrope.density(pressurePa) * drive.strokeVolumeM3() * strokesPerS(pressurePa);
        }

        private double strokesPerS(double pressurePa) {
            return drive.strokesPerS(pressurePa - IsentropeKernel.ATMOSPHERE_PA);
        }

        @Override
        public double longestStep() {
            double stroke = 1 / (STEPS_OF_STROKE * drive.compressionStrokesPerS());
            return drive.reversalS() > 0 ? Math.min(stroke, drive.reversalS() / STEPS_OF_REVERSAL) : stroke;
        }

        @Override
        public double advance(double stepS, double pressurePa) {
            double density = isentrope.density(pressurePa);
            double begin = drive.deliveryPosition(Math.max(1, density / intakeKgPerM3));
            double strokesPerS = strokesPerS(pressurePa);
            if (Double.isNaN(position)) {
                position = begin;
            }
            double left = stepS;
            double strokes = 0;
            while (left > 0) {
                double waited = Math.min(left, waitS);
                waitS -= waited;
                left -= waited;
                left = compressed(begin, left);
                double moved = Math.min(1 - Math.max(position, begin), strokesPerS * left);
                if (left > 0 && moved > 0) {
                    position = Math.max(position, begin) + moved;
                    strokes += moved;
                    left -= moved / strokesPerS;
                }
                if (left > 0 && !reversed(begin)) {
                    break;
                }
            }
            return strokes * density * drive.strokeVolumeM3();
        }

        /** Time that is left once the cylinder has been compressed. */
        private double compressed(double begin, double leftS) {
            double missing = begin - position;
            if (missing <= 0 || leftS <= 0) {
                return leftS;
            }
            double takenS = Math.min(leftS, missing / drive.compressionStrokesPerS());
            position += takenS * drive.compressionStrokesPerS();
            return takenS < leftS ? leftS - takenS : 0;
        }

        /** Whether the stroke has ended and the other side takes over. */
        private boolean reversed(double begin) {
            if (position < STROKE_END || begin >= STROKE_END) {
                return false;
            }
            position = drive.isPrecompressed() ? begin : 0;
            waitS = drive.reversalS();
            return true;
        }
    }
}
