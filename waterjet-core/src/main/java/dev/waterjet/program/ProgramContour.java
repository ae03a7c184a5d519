package dev.waterjet.program;

import dev.waterjet.feed.FaceGrade;
import java.util.Optional;

/**
 * What is cut from one start of the jet to its stop: a lead-in, a loop that closes on itself, a lead-out.
 *
 * @param firstMove index of its first move in the program
 * @param moves how many moves it has
 * @param loopStart index, from the first move on, of the move that starts the loop: moves before it lead in
 * @param loopEnd index, from the first move on, of the move behind the loop: it and those behind it lead out
 * @param isClosed whether there is a loop; if not, loopStart is 0 and loopEnd is the number of moves
 * @param grade grade set by a comment of the program, if any
 */
public record ProgramContour(
        int firstMove, int moves, int loopStart, int loopEnd, boolean isClosed, Optional<FaceGrade> grade) {}
