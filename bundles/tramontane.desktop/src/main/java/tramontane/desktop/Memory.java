package tramontane.desktop;

import java.util.Optional;
import org.osgi.annotation.versioning.ProviderType;

/** Small texts by name that are kept from one start to the next. */
@ProviderType
public interface Memory {

    /** What is kept under a name. */
    Optional<String> get(String name);

    /** Keeps a text under a name. */
    void put(String name, String text);
}
