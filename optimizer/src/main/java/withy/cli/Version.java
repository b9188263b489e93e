package withy.cli;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Properties;
import picocli.CommandLine.IVersionProvider;

/** The version the build wrote beside this class. */
final class Version implements IVersionProvider {

    @Override
    public String[] getVersion() {
        return new String[] {"withy " + number()};
    }

    static String number() {
        Properties properties = new Properties();
        try (InputStream in = Version.class.getResourceAsStream("version.properties")) {
            if (in == null) {
                throw new IllegalStateException("withy/cli/version.properties is missing from the program's jar."
                        + "\nMaybe build again: mvn -q package");
            }
            properties.load(in);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return properties.getProperty("version", "unknown");
    }
}
