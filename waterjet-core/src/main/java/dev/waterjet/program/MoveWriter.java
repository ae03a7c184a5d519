package dev.waterjet.program;

import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Message;
import dev.waterjet.measure.Units;
import dev.waterjet.part.GeometryException;
import dev.waterjet.part.Point;
import dev.waterjet.part.Side;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;

/** Writes a new program from moves. */
final class MoveWriter {

    /** An arc whose ends are nearer could be read as a full circle; one of a smaller radius has none in rounded words. */
    static final double SHORT_ARC_M = 1e-5;

    /** Largest angle of an arc by its radius: near half a circle the radius says little about the centre. */
    static final double MAX_RADIUS_ARC = 2 * Math.PI / 3;

    /** Chords of an arc whose centre no word reaches; a longer one stays an arc, which a reader refuses. */
    private static final int MAX_CHORDS = 10_000;

    /** Word that ends a kerf offset. */
    private static final String OFF = "G40 ";

    private final ProgramCodes codes;
    private final boolean isInch;
    private final double unitM;
    private final int decimals;
    private final StringBuilder out = new StringBuilder();

    private int index;
    private BigDecimal x = BigDecimal.ZERO;
    private BigDecimal y = BigDecimal.ZERO;

    /** The place as it was given. */
    private double givenX;

    private double givenY;
    private boolean isOn;
    private String offset = "";

    MoveWriter(ProgramCodes codes, boolean isInch) {
        this.codes = codes;
        this.isInch = isInch;
        this.unitM = isInch ? 0.0254 : 0.001;
        this.decimals = ProgramNumbers.decimals(codes, isInch);
    }

    String write(String title, List<ProgramMove> moves) {
        if (!title.isBlank()) {
            line("(" + comment(title) + ")");
        }
        line(isInch ? "G20 G90" : "G21 G90");
        codes.startLines().forEach(this::line);
        for (ProgramMove move : moves) {
            write(move);
            index++;
        }
        if (isOn) {
            throw fault(Message.of("moves-leave-jet-on", "the moves leave the jet on; end each cut by jet off"));
        }
        if (offset.equals(OFF)) {
            line(OFF.strip());
        }
        line("M30");
        return out.toString();
    }

    private void write(ProgramMove move) {
        if (move instanceof ProgramMove.Rapid rapid) {
            rapid(rapid.end());
        } else if (move instanceof ProgramMove.Line cut) {
            cut(cut.end(), Kind.SPEED.si(cut.feed()));
        } else if (move instanceof ProgramMove.Arc arc) {
            arc(arc);
        } else if (move instanceof ProgramMove.JetOn on) {
            jetOn(Kind.TIME.si(on.dwell()));
        } else if (move instanceof ProgramMove.JetOff) {
            requireJet(true);
            isOn = false;
            line("M" + codes.jetOff());
        } else if (move instanceof ProgramMove.OffsetOn on) {
            offset = on.side() == Side.LEFT ? "G41 D1 " : "G42 D1 ";
        } else if (move instanceof ProgramMove.OffsetOff) {
            offset = OFF;
        } else if (move instanceof ProgramMove.Comment remark) {
            line("(" + comment(remark.text()) + ")");
        }
    }

    private void jetOn(double dwellS) {
        requireJet(false);
        isOn = true;
        line("M" + codes.jetOn());
        if (dwellS > 0) {
            String words = ProgramNumbers.dwell(codes.dwell(), dwellS, " ");
            line(
                    words.isEmpty()
                            ? "(the machine waits "
                                    + ProgramNumbers.dwell(DwellForm.X_SECONDS, dwellS, "")
                                            .substring(3) + " s to pierce)"
                            : words);
        }
    }

    private void rapid(Point end) {
        requireJet(false);
        if (!offset.isEmpty() && !offset.equals(OFF)) {
            throw fault(Message.of("offset-on-rapid", "a kerf offset starts on the line after jet on"));
        }
        line(offset + "G0 " + place(end.xSi(), end.ySi()));
        offset = "";
    }

    private void cut(Point end, double feedMPerS) {
        requireJet(true);
        lineTo(end.xSi(), end.ySi(), feedMPerS);
    }

    private void lineTo(double toX, double toY, double feedMPerS) {
        boolean isHere = rounded(toX).compareTo(x) == 0 && rounded(toY).compareTo(y) == 0;
        if (!isHere) {
            line(offset + "G1 " + place(toX, toY) + feed(feedMPerS));
            offset = "";
        }
        givenX = toX;
        givenY = toY;
    }

    private void arc(ProgramMove.Arc arc) {
        requireJet(true);
        int turn = arc.turn().sign();
        double feed = Kind.SPEED.si(arc.feed());
        double atX = arc.centre().xSi();
        double atY = arc.centre().ySi();
        double toX = arc.end().xSi();
        double toY = arc.end().ySi();
        requireArc(atX, atY, toX, toY);
        double sweep = ArcGeometry.sweep(givenX, givenY, toX, toY, atX, atY, turn);
        double chord = Math.hypot(toX - givenX, toY - givenY);
        if (Math.abs(sweep) < Math.PI && chord <= SHORT_ARC_M) {
            lineTo(toX, toY, feed);
            return;
        }
        double radius = Math.hypot(toX - atX, toY - atY);
        if (radius <= SHORT_ARC_M) {
            byChords(arc, sweep, Math.PI / 4, feed);
            return;
        }
        // chords of the angle a leave the arc by a last place, r a^2 / 8
        double flat = Math.sqrt(8 * metres(BigDecimal.ONE.movePointLeft(decimals)) / radius);
        if (radius > ProgramReader.MAX_DISTANCE_M && Math.abs(sweep) <= MAX_CHORDS * flat) {
            byChords(arc, sweep, flat, feed);
            return;
        }
        if (!offset.isEmpty()) {
            throw fault(Message.of(
                    "offset-change-on-arc", "a kerf offset starts and ends on a straight move, not on an arc"));
        }
        if (codes.hasRadiusArcs()) {
            byRadius(arc, sweep, feed);
        } else {
            byCentre(arc, feed);
        }
        givenX = toX;
        givenY = toY;
    }

    /** Chords of an angle at most, which leave the arc by no more than the last decimal. */
    private void byChords(ProgramMove.Arc arc, double sweep, double mostRad, double feed) {
        for (Point end : ends(arc, sweep, mostRad)) {
            lineTo(end.xSi(), end.ySi(), feed);
        }
    }

    /** Ends of equal parts of an arc from the place that was given, each of an angle at most. */
    private List<Point> ends(ProgramMove.Arc arc, double sweep, double mostRad) {
        double atX = arc.centre().xSi();
        double atY = arc.centre().ySi();
        double fromX = givenX - atX;
        double fromY = givenY - atY;
        int parts = (int) Math.ceil(Math.abs(sweep) / mostRad - 1e-9);
        List<Point> ends = new ArrayList<>();
        for (int k = 1; k < parts; k++) {
            double cos = Math.cos(sweep * k / parts);
            double sin = Math.sin(sweep * k / parts);
            ends.add(Point.ofSi(atX + fromX * cos - fromY * sin, atY + fromX * sin + fromY * cos));
        }
        ends.add(arc.end());
        return ends;
    }

    private void byCentre(ProgramMove.Arc arc, double feed) {
        BigDecimal i = ProgramNumbers.rounded(arc.centre().xSi() - metres(x), unitM, decimals);
        BigDecimal j = ProgramNumbers.rounded(arc.centre().ySi() - metres(y), unitM, decimals);
        String place = place(arc.end().xSi(), arc.end().ySi());
        line(motion(arc) + place + ' ' + BlockSplitter.word('I', i) + ' ' + BlockSplitter.word('J', j) + feed(feed));
    }

    private void byRadius(ProgramMove.Arc arc, double sweep, double feed) {
        double radius =
                Math.hypot(givenX - arc.centre().xSi(), givenY - arc.centre().ySi());
        for (Point end : ends(arc, sweep, MAX_RADIUS_ARC)) {
            line(motion(arc)
                    + place(end.xSi(), end.ySi())
                    + ' '
                    + BlockSplitter.word('R', ProgramNumbers.rounded(radius, unitM, decimals))
                    + feed(feed));
        }
    }

    private static String motion(ProgramMove.Arc arc) {
        return arc.turn() == Side.LEFT ? "G3 " : "G2 ";
    }

    private void requireArc(double atX, double atY, double toX, double toY) {
        double start = Math.hypot(givenX - atX, givenY - atY);
        double end = Math.hypot(toX - atX, toY - atY);
        if (Math.abs(start - end) > ArcGeometry.ROUNDING_M || Math.min(start, end) < ArcGeometry.MIN_LENGTH_M) {
            throw fault(Message.of("arc-ends-differ", "the start of the arc is {start} from its centre, the end {end}")
                    .with("start", Kind.LENGTH, start, Units.MILLIMETRE)
                    .with("end", Kind.LENGTH, end, Units.MILLIMETRE));
        }
    }

    private BigDecimal rounded(double lengthM) {
        return ProgramNumbers.rounded(lengthM, unitM, decimals);
    }

    private double metres(BigDecimal number) {
        return number.doubleValue() * unitM;
    }

    /** Words of a place, to which the head goes. */
    private String place(double toX, double toY) {
        givenX = toX;
        givenY = toY;
        x = rounded(toX);
        y = rounded(toY);
        return BlockSplitter.word('X', x) + ' ' + BlockSplitter.word('Y', y);
    }

    private String feed(double feedMPerS) {
        return " F" + ProgramNumbers.feed(feedMPerS, unitM);
    }

    private void requireJet(boolean on) {
        if (isOn != on) {
            throw fault(
                    on
                            ? Message.of("move-with-jet-off", "this move requires the jet on")
                            : Message.of("move-with-jet-on", "this move requires the jet off"));
        }
    }

    private GeometryException fault(Message message) {
        return new GeometryException(index, givenX, givenY, message);
    }

    private static String comment(String text) {
        return text.replaceAll("[();\\p{Cntrl}]", " ").strip();
    }

    private void line(String words) {
        out.append(words).append(codes.lineEnding());
    }
}
