package dev.waterjet.reference;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Rows whose inputs begin with those of another row: "as closure-20-ms, before it closes; answer=absolute". */
final class BasedOnOthers {

    private static final Pattern BASE =
            Pattern.compile("^\\s*as ([^,;]+?)\\s*(?:,([^;]*))?(?:;(.*))?$", Pattern.DOTALL);
    private static final int MAX_DEPTH = 10;

    private BasedOnOthers() {}

    /** The rows with the inputs of the others in place of their names; rows without such a name stay as they are. */
    static List<CaseRow> resolved(List<CaseRow> rows) {
        Map<String, String> byId = new HashMap<>();
        ReferenceSuite.cases().forEach(row -> byId.put(row.id(), row.inputs()));
        rows.forEach(row -> byId.put(row.id(), row.get("inputs")));
        List<CaseRow> resolved = new ArrayList<>();
        for (CaseRow row : rows) {
            Map<String, String> columns = new LinkedHashMap<>(row.columns());
            columns.put("inputs", inputs(row.get("inputs"), byId, 0));
            resolved.add(new CaseRow(row.kind(), columns));
        }
        return resolved;
    }

    private static String inputs(String text, Map<String, String> byId, int depth) {
        Matcher base = BASE.matcher(text);
        if (!base.matches() || !byId.containsKey(base.group(1)) || depth > MAX_DEPTH) {
            return text;
        }
        String own = base.group(3) == null ? "" : base.group(3);
        String remark = base.group(2) == null ? "" : base.group(2).strip();
        return inputs(byId.getOrDefault(base.group(1), ""), byId, depth + 1) + "; " + remark + ";" + own;
    }
}
