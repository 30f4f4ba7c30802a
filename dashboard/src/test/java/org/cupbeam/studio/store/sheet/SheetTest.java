package org.cupbeam.studio.store.sheet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.Size;
import net.jqwik.api.constraints.StringLength;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class SheetTest {
    private static final List<String> COLUMNS = List.of("name", "finish_mm", "putts", "rim");

    @Test
    void writesLinesOfValuesThatOtherProgramsRead() throws IOException {
        assertThat(csv(List.of(row("Zoë \"the\" first, of two", -120.5, 3, true), row(null, 1e-4, 20_000_000, false))))
                .isEqualTo("name,finish_mm,putts,rim\r\n\"Zoë \"\"the\"\" first, of two\",-120.5,3,true\r\n"
                        + ",0.0001,20000000,false\r\n");
    }

    @Test
    void writesTheNamesOfTheColumnsOfATableWithoutRows() throws IOException {
        assertThat(csv(List.of())).isEqualTo("name,finish_mm,putts,rim\r\n");
        assertThat(json()).isEqualTo("{\"cupbeam_export\":1,\"putts\":[]}\n");
    }

    @ParameterizedTest
    @ValueSource(strings = {"=1+1", "+49 30", "-x", "@import", "\tx", "'=already"})
    void keepsASpreadsheetFromRunningAName(String name) throws IOException, BadRow {
        String csv = csv(List.of(row(name, null, null, null)));

        assertThat(csv.split("\r\n")[1].replace("\"", "")).startsWith("'");
        assertThat(readCsv(csv).get(0).values()).containsEntry("name", name);
    }

    @Property(tries = 300)
    void readsBackEveryText(@ForAll @Size(max = 4) List<@StringLength(max = 20) String> names) throws IOException, BadRow {
        List<List<Object>> rows = names.stream().map(name -> row(name, 1.5, 7, false)).toList();
        List<String> kept = names.stream().map(name -> name.isEmpty() ? null : name).toList();

        assertThat(readJson(json(rows)).stream().map(cells -> (String) cells.values().get("name")).toList())
                .isEqualTo(names);
        if (names.stream().allMatch(name -> name.indexOf('\0') < 0)) {
            assertThat(readCsv(csv(rows)).stream().map(cells -> (String) cells.values().get("name")).toList())
                    .isEqualTo(kept);
        }
    }

    @Test
    void readsNumbersAndTruthValuesOfBothForms() throws IOException, BadRow {
        List<Cells> read = new ArrayList<>(readCsv(csv(List.of(row("x", -1.25, 9, true)))));
        read.addAll(readJson(json(List.of(row("x", -1.25, 9, true)))));

        for (Cells each : read) {
            assertThat(each.number("finish_mm")).isEqualTo(-1.25);
            assertThat(each.whole("putts", 0)).isEqualTo(9);
            assertThat(each.flag("rim")).isTrue();
            assertThat(each.number("none")).isNaN();
            assertThat(each.wholeOrNull("none", 0)).isNull();
        }
    }

    @Test
    void saysWhereACellMakesNoSense() throws IOException, BadRow {
        Cells cells = readCsv("putts,rim,name\nmany,perhaps,\n").get(0);

        assertThatThrownBy(() -> cells.whole("putts", 0)).hasMessage("file row 1, putts: is \"many\"; give a whole number");
        assertThatThrownBy(() -> cells.flag("rim")).hasMessage("file row 1, rim: is \"perhaps\"; give true or false");
        assertThatThrownBy(() -> cells.text("name", 40)).hasMessage("file row 1, name: is empty; give a text");
        assertThatThrownBy(() -> cells.whole("absent", 0)).hasMessage("file row 1, absent: is empty; give a whole number");
    }

    @Test
    void readsPastAByteOrderMark() throws IOException, BadRow {
        assertThat(readCsv("\uFEFFname,putts\nAda,3\n").get(0).values()).containsEntry("name", "Ada");
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "[]", "{}", "{\"cupbeam_export\":2}", "{\"cupbeam_export\":1,\"putts\":[1]}",
        "{\"cupbeam_export\":1,\"putts\":[{\"a\":1}", "PK\u0003"})
    void refusesWhatIsNoExport(String text) {
        assertThatThrownBy(() -> readJson(text)).isInstanceOf(BadRow.class).hasMessageStartingWith("file")
                .hasMessageContaining("; give");
    }

    @Test
    void takesSoManyColumnsAndNoMore() throws IOException, BadRow {
        assertThat(readJson(columns(100)).get(0).values()).hasSize(100);
        assertThatThrownBy(() -> readJson(columns(101))).hasMessage("file putts 1: has more than 100 columns; "
                + "give a file that was exported as JSON");
        String hundred = "a,".repeat(99) + "a";
        assertThat(readCsv(numbered(hundred) + "\n" + hundred + "\n").get(0).values()).hasSize(100);
        assertThatThrownBy(() -> readCsv(numbered(hundred + ",a") + "\n" + hundred + ",a\n"))
                .hasMessage("file row 1: has more than 100 columns; is it a table that was exported?");
    }

    private static String columns(int count) {
        return "{\"cupbeam_export\":1,\"putts\":[{" + IntStream.range(0, count).mapToObj(i -> "\"c" + i + "\":1")
                .collect(Collectors.joining(",")) + "}]}";
    }

    private static String numbered(String names) {
        int[] number = new int[1];
        return Pattern.compile("a").matcher(names).replaceAll(each -> "a" + number[0]++);
    }

    @Test
    void takesALineOfSoManyBytesAndNoMore() throws IOException, BadRow {
        String row = "a,b,c,d,e,f,g\n" + ("x".repeat(9_361) + ",").repeat(6) + "y".repeat(9_364);
        assertThat(readCsv(row + "\n")).hasSize(1);
        assertThatThrownBy(() -> readCsv(row + "y\n"))
                .isInstanceOf(BadRow.class).hasMessage("file row 1: has a line of more than 65536 bytes; is it a table?");
        assertThatThrownBy(() -> readCsv("a,".repeat(1_000_000))).isInstanceOf(BadRow.class).hasMessageContaining("65536 bytes");
    }

    @Test
    void whatIsNoTextIsSaidToBeNone() {
        byte[] json = "{\"cupbeam_export\":1,\"putts\":[{\"a\":\"\u00C3_\"}]}".getBytes(StandardCharsets.ISO_8859_1);
        assertThatThrownBy(() -> JsonBook.read("file", new ByteArrayInputStream(json), (sheet, cells) -> { }))
                .isInstanceOf(BadRow.class).hasMessageStartingWith("file: ");
        byte[] csv = "name\n\u00C3_\n".getBytes(StandardCharsets.ISO_8859_1);
        assertThatThrownBy(() -> CsvSheet.read("file", new ByteArrayInputStream(csv), (sheet, cells) -> { }))
                .isInstanceOf(BadRow.class).hasMessage("file row 1: is not text in UTF-8; save the table as UTF-8");
    }

    @Test
    void aReasonIsShortAndHarmless() {
        assertThatThrownBy(() -> readJson("{\"cupbeam_export\":1,\"putts\":[{\"a\":n\u2028\u0007" + "x".repeat(2_000)))
                .satisfies(e -> assertThat(e.getMessage().codePoints()).hasSizeLessThan(520)
                        .noneMatch(each -> Character.isISOControl(each) || each == '\u2028'));
    }

    private static List<Object> row(Object... cells) {
        return Arrays.asList(cells);
    }

    private static String csv(List<List<Object>> rows) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        CsvSheet.write(new Sheet("putts", COLUMNS, rows), out);
        return out.toString(StandardCharsets.UTF_8);
    }

    private static String json() throws IOException {
        return json(List.of());
    }

    private static String json(List<List<Object>> rows) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        JsonBook.write(List.of(new Sheet("putts", COLUMNS, rows)), out);
        return out.toString(StandardCharsets.UTF_8).replace("\n{", "{");
    }

    private static List<Cells> readCsv(String text) throws IOException, BadRow {
        List<Cells> read = new ArrayList<>();
        CsvSheet.read("file", in(text), (sheet, cells) -> read.add(cells));
        return read;
    }

    private static List<Cells> readJson(String text) throws IOException, BadRow {
        List<Cells> read = new ArrayList<>();
        JsonBook.read("file", in(text), (sheet, cells) -> read.add(cells));
        return read;
    }

    private static ByteArrayInputStream in(String text) {
        return new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8));
    }
}
