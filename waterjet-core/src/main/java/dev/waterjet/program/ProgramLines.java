package dev.waterjet.program;

/** Lines of a program, without byte order mark and without the percent sign that marks the start or the end of a tape. */
final class ProgramLines {

    /** Reader of one line after the other. */
    interface Reader {

        /**
         * Reads one line.
         *
         * @param line its number from 1
         * @param from place in the text at which it starts
         * @param to place at which it ends
         * @return whether to go on
         */
        boolean read(int line, int from, int to);
    }

    private ProgramLines() {}

    /** Reads the lines of a text, which end in a line feed, a carriage return or both. */
    static void each(String text, Reader reader) {
        int line = 1;
        int start = text.startsWith("\uFEFF") ? 1 : 0;
        boolean goesOn = true;
        while (start < text.length() && goesOn) {
            int end = start;
            while (end < text.length() && text.charAt(end) != '\n' && text.charAt(end) != '\r') {
                end++;
            }
            if (start == end || text.charAt(start) != '%') {
                goesOn = reader.read(line, start, end);
            }
            if (end + 1 < text.length() && text.charAt(end) == '\r' && text.charAt(end + 1) == '\n') {
                end++;
            }
            start = end + 1;
            line++;
        }
    }
}
