package dev.waterjet.program;

import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import dev.waterjet.part.Point;
import dev.waterjet.part.Side;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Speed;
import javax.measure.quantity.Time;

/** Step of a program to be written by {@link ProgramWriter}. */
public sealed interface ProgramMove {

    /**
     * Rapid traverse, with the jet off.
     *
     * @param end where it ends
     */
    record Rapid(Point end) implements ProgramMove {

        /**
         * Checks the component.
         *
         * @param end where it ends
         */
        public Rapid {
            Objects.requireNonNull(end, "end");
        }
    }

    /**
     * Jet on.
     *
     * @param dwell time to pierce before the head moves; zero for none
     */
    record JetOn(Quantity<Time> dwell) implements ProgramMove {

        /**
         * Checks the component.
         *
         * @param dwell time to pierce
         */
        public JetOn {
            Objects.requireNonNull(dwell, "dwell");
            Require.notNegative("dwell", Kind.TIME.si(dwell), Units.SECOND);
        }
    }

    /** Jet off. */
    record JetOff() implements ProgramMove {}

    /**
     * Line with the jet on.
     *
     * @param end where it ends
     * @param feed feed, above 0
     */
    record Line(Point end, Quantity<Speed> feed) implements ProgramMove {

        /**
         * Checks the components.
         *
         * @param end where it ends
         * @param feed feed
         */
        public Line {
            Objects.requireNonNull(feed, "feed");
            Objects.requireNonNull(end, "end");
            Require.positive("feed of a line", Kind.SPEED.si(feed), Units.MILLIMETRE_PER_MINUTE);
        }
    }

    /**
     * Arc with the jet on; one that ends where it starts is a full circle.
     *
     * @param end where it ends
     * @param centre centre of its circle
     * @param turn left for counter-clockwise, right for clockwise
     * @param feed feed, above 0
     */
    record Arc(Point end, Point centre, Side turn, Quantity<Speed> feed) implements ProgramMove {

        /**
         * Checks the components.
         *
         * @param end where it ends
         * @param centre centre of its circle
         * @param turn left or right
         * @param feed feed
         */
        public Arc {
            Objects.requireNonNull(feed, "feed");
            Objects.requireNonNull(end, "end");
            Objects.requireNonNull(centre, "centre");
            Objects.requireNonNull(turn, "turn");
            Require.positive("feed of an arc", Kind.SPEED.si(feed), Units.MILLIMETRE_PER_MINUTE);
        }
    }

    /**
     * Kerf offset by the machine from the next move on, which must be a line.
     *
     * @param side side of the path on which the jet runs
     */
    record OffsetOn(Side side) implements ProgramMove {

        /**
         * Checks the component.
         *
         * @param side side of the path on which the jet runs
         */
        public OffsetOn {
            Objects.requireNonNull(side, "side");
        }
    }

    /** End of the kerf offset with the next move, which must be no arc. */
    record OffsetOff() implements ProgramMove {}

    /**
     * Comment, on a line of its own. Notes for the next cut are comments that begin with {@code waterjet:}.
     *
     * @param text text; parentheses, semicolons and control characters are replaced by blanks
     */
    record Comment(String text) implements ProgramMove {

        /**
         * Checks the component.
         *
         * @param text text
         */
        public Comment {
            Objects.requireNonNull(text, "text");
        }
    }
}
