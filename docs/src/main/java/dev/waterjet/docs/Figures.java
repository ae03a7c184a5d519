package dev.waterjet.docs;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** All figures of the guides. */
public final class Figures {

    private Figures() {}

    /**
     * The figures.
     *
     * @return each figure once
     */
    public static List<Figure> all() {
        List<Figure> all = new ArrayList<>();
        all.addAll(WaterFigures.all());
        all.addAll(CircuitFigures.all());
        all.addAll(FeedFigures.all());
        all.addAll(LearnFigures.all());
        all.addAll(KerfFigures.all());
        all.addAll(PredictFigures.all());
        all.addAll(ToolPathFigures.all());
        all.addAll(MotionFigures.all());
        all.addAll(ValidationFigures.all());
        all.addAll(CalibrationFigures.all());
        all.addAll(JobFigures.all());
        return List.copyOf(all);
    }

    /**
     * Draws the figures afresh.
     *
     * @param args the folder of the figures, {@code docs/figures} if none is given; then names of figures, all if none is
     *     given
     * @throws IOException if a file cannot be written
     */
    public static void main(String... args) throws IOException {
        Path folder = Path.of(args.length > 0 ? args[0] : "docs/figures");
        List<String> wanted = List.of(args).subList(Math.min(1, args.length), args.length);
        Files.createDirectories(folder);
        for (Figure figure : all()) {
            if (wanted.isEmpty() || wanted.contains(figure.name())) {
                Files.writeString(
                        folder.resolve(figure.name() + ".svg"), figure.svg().get() + "\n", StandardCharsets.UTF_8);
            }
        }
    }
}
