package gripwright.bench;

import gripwright.files.CalibrationFile;
import gripwright.files.GrowingFile;
import gripwright.files.LogMarks;
import gripwright.model.Project;
import java.io.IOException;
import java.nio.file.DirectoryIteratorException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * What the built pads say now: follows the logs in the folder {@code logs} while somebody looks on. A page asks for what is
 * newer than what it has, and waits for it; so it gets the newest state whenever it is ready for it, and never a backlog.
 */
final class Now implements AutoCloseable {
    static final String LOGS = "logs";

    /** Version of a state in which there is no log. */
    static final long NOTHING = -1;

    private static final long LOOK_MILLIS = 250;
    private static final long READ_ON_MILLIS = 5;
    private static final long SECOND = 1_000_000_000L;
    /** States follow one another no faster. */
    private static final long TELL = LOOK_MILLIS * 900_000;

    private static final long WAIT = 5 * SECOND;
    /** After so long nobody looks on any more. */
    private static final long UNASKED = 5 * SECOND;

    private static final int MOST_FOLLOWED = 4;
    private static final int MOST_FILES = 5_000;
    private static final int MOST_NAMED = 40;

    private final Desk desk;
    private final Map<String, Followed> followed = new LinkedHashMap<>();
    private List<Listed> listed = List.of();
    private long listedAt;
    private String newest = "";
    private long versions;
    private @Nullable Thread looking;
    private boolean closed;

    Now(Desk desk) {
        this.desk = desk;
    }

    /** A log in the folder; when it was written to last [ms]. */
    private record Listed(String name, long modified) {}

    /** A log that somebody looks at. */
    static final class Followed {
        private final String name;
        private final String inputs;
        private final NowLog log;
        private long version;
        private long askedAt;
        private long toldAt;
        private boolean behind;
        private boolean changed;
        private boolean told;

        private Followed(String name, String inputs, NowLog log) {
            this.name = name;
            this.inputs = inputs;
            this.log = log;
        }

        String name() {
            return name;
        }

        NowLog log() {
            return log;
        }

        /** Another for every state. */
        long version() {
            return version;
        }

        /** Another for every description of columns. */
        String layoutId() {
            return log.known() ? Integer.toHexString((name + inputs + log.head()).hashCode()) : "";
        }

        /** Whether there is more to read than was read so far. */
        boolean behind() {
            return behind;
        }
    }

    /** The newest state, once it is newer than the one that the page has; null if nothing happened for some seconds. */
    synchronized @Nullable String answer(Query query) throws InterruptedException {
        long after = (long) query.number("after", 0);
        String wanted = query.text("log", "");
        long end = System.nanoTime() + WAIT;
        while (!closed) {
            long now = System.nanoTime();
            list(now);
            String name = wanted.isEmpty() ? newest() : wanted;
            if (name.isEmpty()) {
                if (after != NOTHING) {
                    return Wire.object("version", NOTHING, "logs", List.of(), "log", "", "state", "none");
                }
            } else {
                Followed f = follow(name, now);
                if (f.told && f.version != after) {
                    boolean has = query.text("layout", "").equals(f.layoutId());
                    return NowWire.of(f, logs(), has ? Wire.raw() : layout(f), query.text("taxel", ""), now);
                }
            }
            if (now >= end) {
                return null;
            }
            wait(LOOK_MILLIS);
        }
        throw new InterruptedException("the server ends");
    }

    private Wire.Raw logs() {
        return new Wire.Raw("["
                + String.join(
                        ",",
                        listed.stream()
                                .limit(MOST_NAMED)
                                .map(l -> Wire.object("name", l.name, "modified", l.modified))
                                .toList())
                + "]");
    }

    private Wire.Raw layout(Followed f) {
        Project project = desk.state().project();
        return f.log.known()
                ? NowWire.layout(
                        f.log,
                        NowPlaces.of(f.log.taxels(), desk.state().pads(), project == null ? null : project.hand()))
                : Wire.raw();
    }

    // ---- which logs there are

    private void list(long now) {
        if (listedAt != 0 && now - listedAt < SECOND) {
            return;
        }
        listedAt = now;
        List<Listed> found = new ArrayList<>();
        Path folder = desk.folder().resolve(LOGS);
        if (Files.exists(folder, LinkOption.NOFOLLOW_LINKS)) {
            if (!Files.isDirectory(folder, LinkOption.NOFOLLOW_LINKS)) {
                throw unreadable("it is no plain folder, and links are not followed");
            }
            try (DirectoryStream<Path> files = Files.newDirectoryStream(folder, "*" + LogMarks.ENDING)) {
                Iterator<Path> each = files.iterator();
                while (each.hasNext() && found.size() < MOST_FILES) {
                    Path file = each.next();
                    String name = String.valueOf(file.getFileName());
                    BasicFileAttributes is = attributes(file);
                    if (is != null && is.isRegularFile() && !name.endsWith(LogMarks.SIDE_ENDING)) {
                        found.add(new Listed(name, is.lastModifiedTime().toMillis()));
                    }
                }
            } catch (IOException | DirectoryIteratorException e) {
                throw unreadable(String.valueOf(e.getMessage()));
            }
        }
        found.sort(Comparator.comparingLong(Listed::modified).reversed().thenComparing(Listed::name));
        listed = found;
    }

    private Refusal unreadable(String why) {
        listedAt = 0; // the next look may find it mended
        return new Refusal(409, "logs cannot be looked into: " + why);
    }

    private static @Nullable BasicFileAttributes attributes(Path file) {
        try {
            return Files.readAttributes(file, BasicFileAttributes.class, LinkOption.NOFOLLOW_LINKS);
        } catch (IOException e) {
            return null; // gone meanwhile
        }
    }

    /** The log that is written; while two are, the one that was shown first. */
    private String newest() {
        Followed shown = followed.get(newest);
        boolean stays = shown != null && shown.log.running() && named(newest) != null;
        newest = stays ? newest : listed.isEmpty() ? "" : listed.get(0).name;
        return newest;
    }

    private @Nullable Listed named(String name) {
        return listed.stream().filter(l -> l.name.equals(name)).findFirst().orElse(null);
    }

    // ---- following

    private Followed follow(String name, long now) {
        Followed known = followed.get(name);
        String inputs = inputs();
        if (known != null && known.inputs.equals(inputs)) {
            known.askedAt = now;
            return known;
        }
        Listed log = named(name); // a name that is asked for is never made into a path unless the folder has it
        if (log == null) {
            throw new Refusal(404, "there is no log '" + name + "' in the folder logs");
        }
        drop(name);
        if (followed.size() >= MOST_FOLLOWED) {
            throw new Refusal(503, MOST_FOLLOWED + " logs are looked at already; close a page");
        }
        try {
            double age = (System.currentTimeMillis() - log.modified) / 1e3;
            NowLog opened = new NowLog(
                    desk.folder(),
                    desk.folder().resolve(LOGS).resolve(name),
                    desk.state().pads(),
                    age,
                    now);
            Followed f = new Followed(name, inputs, opened);
            f.askedAt = now;
            f.version = ++versions;
            followed.put(name, f);
            if (looking == null) {
                Thread thread = new Thread(this::look, "gripwright-now");
                thread.setDaemon(true);
                looking = thread;
                thread.start();
            }
            return f;
        } catch (IOException e) {
            throw new Refusal(404, "the log " + name + " cannot be read: " + e.getMessage());
        }
    }

    /** What the columns and the newtons depend on. */
    private String inputs() {
        BasicFileAttributes is = attributes(desk.folder().resolve(CalibrationFile.NAME));
        String calibration =
                is == null ? "" : is.size() + " " + is.lastModifiedTime().toMillis();
        return Integer.toHexString((desk.state().revision() + calibration).hashCode());
    }

    private void drop(String name) {
        Followed old = followed.remove(name);
        if (old != null) {
            old.log.close();
        }
    }

    private void look() {
        try {
            while (true) {
                boolean behind = false;
                synchronized (this) {
                    long now = System.nanoTime();
                    for (String name : List.copyOf(followed.keySet())) {
                        Followed f = followed.get(name);
                        if (f != null && now - f.askedAt > UNASKED) {
                            drop(name);
                        } else if (f != null) {
                            look(f, now);
                            behind |= f.behind;
                        }
                    }
                    if (closed || followed.isEmpty()) {
                        looking = null;
                        return;
                    }
                    notifyAll();
                }
                Thread.sleep(behind ? READ_ON_MILLIS : LOOK_MILLIS);
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    private void look(Followed f, long now) {
        try {
            GrowingFile.Found found = f.log.look(now);
            if (found == GrowingFile.Found.ANOTHER || found == GrowingFile.Found.GONE) {
                drop(f.name); // asked for again it is opened anew
                listedAt = 0;
                return;
            }
            f.behind = f.log.behind();
            f.changed |= found == GrowingFile.Found.MORE || f.log.running() && now - f.toldAt >= SECOND;
            if (!f.told || f.changed && now - f.toldAt >= TELL) {
                f.version = ++versions;
                f.toldAt = now;
                f.told = true;
                f.changed = false;
            }
        } catch (IOException e) {
            drop(f.name);
            listedAt = 0;
        }
    }

    @Override
    public synchronized void close() {
        closed = true;
        List.copyOf(followed.keySet()).forEach(this::drop);
        notifyAll();
        if (looking != null) {
            looking.interrupt();
        }
    }
}
