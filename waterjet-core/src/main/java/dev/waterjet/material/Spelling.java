package dev.waterjet.material;

/** Distance between two spellings. */
final class Spelling {

    private Spelling() {}

    /** Number of letters to insert, drop or change between a word and an id, or the nearest hyphenated part of the id. */
    static int distance(String wanted, String id) {
        int minimum = edits(wanted, id);
        for (String part : id.split("-", -1)) {
            minimum = Math.min(minimum, edits(wanted, part));
        }
        return minimum;
    }

    /** Levenshtein distance by rows. */
    private static int edits(String a, String b) {
        int[] row = new int[b.length() + 1];
        for (int j = 0; j <= b.length(); j++) {
            row[j] = j;
        }
        for (int i = 1; i <= a.length(); i++) {
            int diagonal = row[0];
            row[0] = i;
            for (int j = 1; j <= b.length(); j++) {
                int change = diagonal + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
                diagonal = row[j];
                row[j] = Math.min(change, Math.min(row[j], row[j - 1]) + 1);
            }
        }
        return row[b.length()];
    }
}
