package gripwright.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What may stand after --from. */
class SourceAddressTest {
    @Test
    void everyKindIsRead() {
        assertThat(SourceAddress.of("serial:/dev/ttyACM0?baud=115200"))
                .isEqualTo(new SourceAddress.Serial("/dev/ttyACM0", 115_200));
        assertThat(SourceAddress.of("tcp:reader.local:4000")).isEqualTo(new SourceAddress.Tcp("reader.local", 4000));
        assertThat(SourceAddress.of("tcp:[::1]:4000")).isEqualTo(new SourceAddress.Tcp("::1", 4000));
        assertThat(SourceAddress.of("-")).isEqualTo(new SourceAddress.StandardInput());
        assertThat(SourceAddress.of("file:a.csv")).isEqualTo(new SourceAddress.Replay("a.csv", true));
        assertThat(SourceAddress.of("file:a.csv?pace=own")).isEqualTo(new SourceAddress.Replay("a.csv", true));
        assertThat(SourceAddress.of("file:a.csv?pace=max")).isEqualTo(new SourceAddress.Replay("a.csv", false));
        assertThat(SourceAddress.of("file:what?.csv")).isEqualTo(new SourceAddress.Replay("what?.csv", true));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            /dev/ttyACM0                | is no source; expected serial:
            usb:0                       | is no source; expected serial:
            serial:/dev/ttyACM0         | lacks its rate; expected serial:PORT?baud=RATE
            serial:?baud=9600           | lacks its port
            serial:/dev/x?baud=fast     | baud is 'fast'; expected a whole number from 1
            serial:/dev/x?baud=0        | baud is '0'
            serial:/dev/x?speed=9600    | no option 'speed=9600'; expected baud=RATE
            tcp:reader                  | lacks host or port; expected tcp:HOST:PORT
            tcp::4000                   | lacks host or port
            tcp:reader:70000            | port is '70000'; expected a whole number from 1 to 65535
            file:                       | names no file
            file:a.csv?pace=2           | expected pace=own (unless said otherwise) or pace=max
            """)
    void whatIsWrongIsNamed(String text, String words) {
        assertThatThrownBy(() -> SourceAddress.of(text))
                .hasMessageContaining(text)
                .hasMessageContaining(words);
    }
}
