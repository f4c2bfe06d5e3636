package org.seacairn.layer;

import java.util.List;

/**
 * What an update does to a list of pointers or positions: the control fields FSPC, VRPC and SGCC (IHO S-57 edition 3.1,
 * part 3, 8.4).
 *
 * @param instruction {@link #INSERT}, {@link #DELETE} or {@link #MODIFY}
 * @param index of the first entry concerned, from 1
 * @param count of the entries concerned
 */
record S57Change(int instruction, int index, int count) {
    static final int INSERT = 1;
    static final int DELETE = 2;
    static final int MODIFY = 3;

    static S57Change of(Iso8211Rows row, String instruction, String index, String count) {
        return new S57Change(row.number(instruction), row.number(index), row.number(count));
    }

    /**
     * Changes a list.
     *
     * @param values what is put in, nothing for a deletion
     * @return false if the list has no such entries or there are not as many values as the change says
     */
    <T> boolean apply(List<T> list, List<T> values) {
        int from = index - 1;
        if (from < 0 || count < 0 || values.size() != (instruction == DELETE ? 0 : count)) {
            return false;
        }
        switch (instruction) {
            case INSERT -> {
                if (from > list.size()) {
                    return false;
                }
                list.addAll(from, values);
                return true;
            }
            case DELETE, MODIFY -> {
                if ((long) from + count > list.size()) {
                    return false;
                }
                List<T> concerned = list.subList(from, from + count);
                concerned.clear();
                concerned.addAll(values);
                return true;
            }
            default -> {
                return false;
            }
        }
    }
}
