package org.teavm.classlib.java.util;

/** StringJoiner of the JDK, which the class library of the compiler to script lacks. */
public final class TStringJoiner {

    private final String separator;
    private final String before;
    private final String after;
    private StringBuilder joined;

    public TStringJoiner(CharSequence separator) {
        this(separator, "", "");
    }

    public TStringJoiner(CharSequence separator, CharSequence before, CharSequence after) {
        this.separator = separator.toString();
        this.before = before.toString();
        this.after = after.toString();
    }

    public TStringJoiner add(CharSequence text) {
        if (joined == null) {
            joined = new StringBuilder(before);
        } else {
            joined.append(separator);
        }
        joined.append(text);
        return this;
    }

    @Override
    public String toString() {
        return joined == null ? before + after : joined + after;
    }
}
