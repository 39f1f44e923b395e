package tramontane.acoustics.recording;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import org.junit.jupiter.api.Test;

class ArchitectureTest {

    private static final JavaClasses CLASSES = new ClassFileImporter().withImportOption(new ImportOption.DoNotIncludeTests())
            .importPackages("tramontane.acoustics.recording");

    /** Recordings are numbers: no design, no sound system of the machine. */
    @Test
    void recordingsKnowThePhysicsOfSoundOnly() {
        classes().should().onlyDependOnClassesThat().resideInAnyPackage("java..", "tramontane.acoustics.recording",
                "tramontane.physics.sound", "org.hipparchus..", "org.osgi.annotation..").check(CLASSES);
    }
}
