package gripwright.files;

import gripwright.signal.Decoder;
import gripwright.signal.Decoding;
import java.io.BufferedWriter;
import java.io.IOException;
import java.io.Writer;
import java.util.ArrayList;
import java.util.List;

/** Writes decoded forces as CSV, row by row: forces with one standard deviation per taxel, then sums per pad. */
public final class ForceTable implements AutoCloseable {
    private static final long MICRO = 1_000_000;

    private final BufferedWriter out;
    private final Decoding how;
    private final List<Decoder.PadPlace> pads;
    private final StringBuilder line = new StringBuilder();

    public ForceTable(Writer to, Decoding how, List<Decoder.PadPlace> pads) throws IOException {
        this.out = new BufferedWriter(to, 1 << 16);
        this.how = how;
        this.pads = pads;
        for (DataTable.Column column : columns(how, pads)) {
            line.append(line.isEmpty() ? "" : ",").append(name(column.name()));
        }
        end();
    }

    /** All columns, in order. */
    public static List<DataTable.Column> columns(Decoding how, List<Decoder.PadPlace> pads) {
        List<DataTable.Column> all = new ArrayList<>();
        all.add(new DataTable.Column("t_s", DataTable.Kind.NUMBER));
        for (Decoding.Cell cell : how.taxels()) {
            for (String of : List.of("_N", "_sd_N")) {
                all.add(new DataTable.Column(cell.column() + of, DataTable.Kind.NUMBER));
            }
        }
        for (Decoder.PadPlace pad : pads) {
            for (String of : List.of("_N", "_sd_N", "_centre_mm", "_centre_sd_mm")) {
                all.add(new DataTable.Column(pad.name() + of, DataTable.Kind.NUMBER));
            }
            for (String of : List.of("_touched", "_slip", "_clipped")) {
                all.add(new DataTable.Column(pad.name() + of, DataTable.Kind.WHOLE));
            }
        }
        return all;
    }

    private static String name(String text) {
        return text.indexOf(',') < 0 && text.indexOf('"') < 0 ? text : '"' + text.replace("\"", "\"\"") + '"';
    }

    /** The row that the decoder has just made. */
    public void row(double time, Decoder d) throws IOException {
        number(time);
        for (int i = 0; i < how.taxels().size(); i++) {
            line.append(',');
            number(d.force(i));
            line.append(',');
            number(d.error(i));
        }
        for (int p = 0; p < pads.size(); p++) {
            line.append(',');
            number(d.total(p));
            line.append(',');
            number(d.totalError(p));
            line.append(',');
            number(1e3 * d.centre(p));
            line.append(',');
            number(1e3 * d.centreError(p));
            line.append(d.touched(p) ? ",1" : ",0").append(d.slipping(p) ? ",1" : ",0");
            boolean clipped = false;
            for (int i = 0; i < pads.get(p).along().length; i++) {
                clipped |= d.clipped(pads.get(p).first() + i);
            }
            line.append(clipped ? ",1" : ",0");
        }
        end();
    }

    /** With six decimals, trailing zeros dropped; nothing for what is not known. Ten times as quick as the JDK's text. */
    private void number(double value) {
        if (!Double.isFinite(value)) {
            return;
        }
        if (Math.abs(value) > 1e12) {
            line.append(value);
            return;
        }
        long micro = Math.round(value * MICRO);
        if (micro < 0) {
            line.append('-');
            micro = -micro;
        }
        line.append(micro / MICRO);
        long rest = micro % MICRO;
        if (rest != 0) {
            line.append('.');
            long unit = MICRO / 10;
            while (rest != 0) {
                line.append((char) ('0' + rest / unit));
                rest %= unit;
                unit /= 10;
            }
        }
    }

    private void end() throws IOException {
        line.append('\n');
        out.append(line);
        line.setLength(0);
    }

    @Override
    public void close() throws IOException {
        out.close();
    }
}
