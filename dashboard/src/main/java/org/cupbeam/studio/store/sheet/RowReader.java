package org.cupbeam.studio.store.sheet;

/** Takes rows as they are read. */
@FunctionalInterface
public interface RowReader {
    /**
     * One row.
     *
     * @param sheet the table's name; null where the file does not say
     */
    void row(String sheet, Cells cells) throws BadRow;
}
