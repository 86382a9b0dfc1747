package gripwright.record;

import gripwright.files.Recording;
import java.util.List;
import java.util.Map;

/**
 * A recording while it runs.
 *
 * @param soFar without strips and traces
 * @param seconds since it began
 * @param rate readings in the last second [1/s]
 * @param silentFor time since anything came [s]
 * @param waiting bytes between source and log
 * @param others last values of the columns that are no taxels
 * @param warnings what is wrong with the taxels, in words
 * @param lastFault why the last line that was no reading was none, empty if there was none
 */
public record Live(
        Recording soFar,
        double seconds,
        double rate,
        double silentFor,
        int waiting,
        Map<String, Double> others,
        List<String> warnings,
        String lastFault) {}
