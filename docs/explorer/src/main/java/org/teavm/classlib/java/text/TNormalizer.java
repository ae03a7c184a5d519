package org.teavm.classlib.java.text;

import org.teavm.jso.JSBody;

/** Normalizer of the JDK, by that of the browser. */
public final class TNormalizer {

    public enum Form {
        NFD,
        NFC,
        NFKD,
        NFKC
    }

    private TNormalizer() {}

    public static String normalize(CharSequence text, Form form) {
        return normalize(text.toString(), form.name());
    }

    @JSBody(
            params = {"text", "form"},
            script = "return text.normalize(form);")
    private static native String normalize(String text, String form);
}
