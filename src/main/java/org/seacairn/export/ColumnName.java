package org.seacairn.export;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/** Column names made from the labels of a plan. */
public final class ColumnName {
    private ColumnName() {}

    /** The plan's column name of a label, or {@code unnamed} where nothing of it can stand in a name. */
    public static String of(String label) {
        String name = org.seacairn.plan.ColumnName.of(label);
        return name.isEmpty() ? "unnamed" : name;
    }

    /**
     * A name for each label, in order. Labels that come to the same name, or to one that is taken
     * already, are numbered: {@code lanes}, {@code lanes_2}.
     */
    static List<String> distinct(List<String> labels, Set<String> taken) {
        Set<String> used = new HashSet<>(taken);
        List<String> names = new ArrayList<>();
        for (String label : labels) {
            String name = of(label);
            String free = name;
            for (int i = 2; !used.add(free); i++) {
                free = name + "_" + i;
            }
            names.add(free);
        }
        return names;
    }
}
