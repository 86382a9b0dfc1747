package gripwright.files;

import com.code_intelligence.jazzer.junit.FuzzTest;
import gripwright.fuzz.Limit;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;

/**
 * Any bytes are a project or are refused by {@link ProjectFaults}. Files stand one after the other in the input, parted
 * by a zero byte: hand.yaml, need.yaml. STL files are another test's.
 */
class ProjectFuzz {
    @FuzzTest
    void anyFilesAreReadOrRefused(byte[] bytes) {
        Limit.hold(() -> read(bytes));
    }

    private static void read(byte[] bytes) throws IOException {
        int part = 0;
        while (part < bytes.length && bytes[part] != 0) {
            part++;
        }
        Path folder = Files.createTempDirectory("gripwright-fuzz");
        Path hand = folder.resolve(ProjectReader.HAND);
        Path need = folder.resolve(ProjectReader.NEED);
        try {
            Files.write(hand, Arrays.copyOf(bytes, part));
            Files.write(
                    need,
                    part < bytes.length
                            ? Arrays.copyOfRange(bytes, part + 1, bytes.length)
                            : "objects: {}\n".getBytes(StandardCharsets.UTF_8));
            ProjectReader.read(folder);
        } catch (ProjectFaults refused) {
            if (String.valueOf(refused.getMessage()).isBlank()) {
                throw new AssertionError("refused without a reason", refused);
            }
        } finally {
            Files.deleteIfExists(hand);
            Files.deleteIfExists(need);
            Files.delete(folder);
        }
    }
}
