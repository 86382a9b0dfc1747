package gripwright.record;

import com.fazecast.jSerialComm.SerialPort;
import com.fazecast.jSerialComm.SerialPortInvalidPortException;
import java.io.IOException;
import java.util.Arrays;
import java.util.stream.Collectors;

/** A serial port; 8 bits, no parity, one stop bit, no flow control. */
final class SerialSource implements Source {
    private static final int WAIT_MILLIS = 200;
    private static final int BUFFER_BYTES = 1 << 16;

    private final SerialPort port;
    private final String name;
    private volatile boolean closing;

    private SerialSource(SerialPort port, String name) {
        this.port = port;
        this.name = name;
    }

    static Source open(SourceAddress.Serial address) throws IOException {
        SerialPort port;
        try {
            port = SerialPort.getCommPort(address.port());
        } catch (SerialPortInvalidPortException e) {
            throw new IOException("there is no serial port " + address.port() + "; " + others(), e);
        }
        port.setComPortParameters(address.baud(), 8, SerialPort.ONE_STOP_BIT, SerialPort.NO_PARITY);
        port.setFlowControl(SerialPort.FLOW_CONTROL_DISABLED);
        port.setComPortTimeouts(SerialPort.TIMEOUT_READ_SEMI_BLOCKING, WAIT_MILLIS, 0);
        // The library's error code is not 0 on every port that did open, so only the answer counts.
        if (!port.openPort(0, BUFFER_BYTES, BUFFER_BYTES)) {
            throw new IOException("cannot open " + address.port() + " at " + address.baud()
                    + " baud; does another program hold it, and may you read it (on Debian: group dialout)? "
                    + others());
        }
        return new SerialSource(port, address.port());
    }

    private static String others() {
        SerialPort[] ports = SerialPort.getCommPorts();
        return ports.length == 0
                ? "this machine has no serial port now"
                : "ports of this machine now: "
                        + Arrays.stream(ports)
                                .map(SerialPort::getSystemPortPath)
                                .limit(8)
                                .collect(Collectors.joining(", "));
    }

    @Override
    public int read(byte[] into) throws IOException {
        int n = port.readBytes(into, into.length);
        if (n < 0 || n == 0 && !port.isOpen()) {
            if (closing) {
                return -1;
            }
            throw new IOException("the port " + name + " is gone (unplugged?)");
        }
        return n;
    }

    @Override
    public void close() {
        closing = true;
        port.closePort();
    }
}
