package gripwright.record;

import java.io.IOException;
import java.io.InputStream;
import java.net.InetSocketAddress;
import java.net.Socket;
import java.net.SocketTimeoutException;
import java.net.UnknownHostException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;

/** Opens sources. */
public final class Sources {
    private static final int CONNECT_MILLIS = 5_000;
    private static final int RECEIVE_BYTES = 1 << 20;

    private Sources() {}

    /**
     * Opens the source.
     *
     * @param folder that a relative path starts from
     * @throws IOException in words for people: what failed, and what to look at
     */
    public static Source open(SourceAddress address, Path folder) throws IOException {
        if (address instanceof SourceAddress.Serial serial) {
            return SerialSource.open(serial); // a class of its own: the library is loaded for it only
        }
        if (address instanceof SourceAddress.Tcp tcp) {
            return connect(tcp);
        }
        if (address instanceof SourceAddress.Replay replay) {
            return file(replay, folder.resolve(replay.path()));
        }
        return new Streamed(System.in, () -> {}); // closing it could wait for the very read it should end
    }

    private static Source connect(SourceAddress.Tcp tcp) throws IOException {
        Socket socket = new Socket();
        String where = tcp.host() + " port " + tcp.port();
        try {
            socket.setReceiveBufferSize(RECEIVE_BYTES);
            socket.connect(new InetSocketAddress(tcp.host(), tcp.port()), CONNECT_MILLIS);
            socket.setKeepAlive(true);
            return new Streamed(socket.getInputStream(), socket);
        } catch (UnknownHostException e) {
            socket.close();
            throw new IOException("no machine is called '" + tcp.host() + "'; give its name or IP address", e);
        } catch (SocketTimeoutException e) {
            socket.close();
            throw new IOException("no answer from " + where + " within 5 s; is it on, and on this network?", e);
        } catch (IOException e) {
            socket.close();
            throw new IOException("cannot connect to " + where + ": " + e.getMessage() + "; does it listen there?", e);
        }
    }

    private static Source file(SourceAddress.Replay replay, Path path) throws IOException {
        if (Files.isDirectory(path)) {
            throw new IOException(replay.path() + " is a folder; expected a file of readings");
        }
        try {
            InputStream in = Files.newInputStream(path);
            return new Streamed(in, in);
        } catch (NoSuchFileException e) {
            throw new IOException("there is no file " + replay.path(), e);
        } catch (FileSystemException e) {
            throw new IOException("cannot read " + replay.path() + ": " + reason(e), e);
        }
    }

    private static String reason(FileSystemException e) {
        return e.getReason() == null ? e.getClass().getSimpleName() : e.getReason();
    }

    /** A stream of bytes that ends by itself. */
    private record Streamed(InputStream in, AutoCloseable closing) implements Source {
        @Override
        public int read(byte[] into) throws IOException {
            return in.read(into);
        }

        @Override
        public void close() {
            try {
                closing.close();
            } catch (Exception e) {
                return; // everything that was read is in the log; the source has nothing more to lose
            }
        }
    }
}
