package gripwright.record;

import java.io.IOException;

/** Where bytes come from. */
public interface Source extends AutoCloseable {
    /**
     * Waits for bytes.
     *
     * @return how many were put at the start of {@code into}, 0 if none came for a while, -1 at the end
     * @throws IOException if the source is gone, in words for people
     */
    int read(byte[] into) throws IOException;

    /** Ends a waiting {@link #read} where the system allows it. */
    @Override
    void close();
}
