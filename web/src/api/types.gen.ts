// Made by scripts/types.mjs from schemas/api/openapi.json: do not edit.
export interface paths {
    "/api/workshop": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** The workshop, its people and gauges */
        get: operations["workshop"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/people": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** Who may sign on */
        get: operations["people"];
        put?: never;
        /** A person added. Nobody is changed: who signed stays who he was. Sent twice it is kept once. */
        post: operations["putPerson"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/people/{id}/at-work": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /** Somebody leaves, or is back. He is kept with all that he signed; who has left is not offered at sign-on and enters nothing. */
        post: operations["setAtWork"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/customers": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** Customers */
        get: operations["customers"];
        put?: never;
        /** A customer added. Sent twice it is kept once. */
        post: operations["putCustomer"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/board": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** What each machine waits for */
        get: operations["board"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/machines": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** Machines */
        get: operations["machines"];
        put?: never;
        /** A machine added. Sent twice it is kept once. */
        post: operations["putMachine"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/machines/{id}": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** One machine: history and ages */
        get: operations["machine"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/machines/{id}/jobs": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** Jobs of a machine, newest first */
        get: operations["machineJobs"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/machines/{id}/hours": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /** An hour-meter reading noted, or an earlier one corrected. Nothing is overwritten. Sent twice it is kept once. */
        post: operations["putHours"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/shafts": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** The newest version of each shaft */
        get: operations["shafts"];
        put?: never;
        /** A new version of a definition */
        post: operations["putShaft"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/shafts/check": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /** A definition as typed: problems with their lines, and the drawing */
        post: operations["checkShaft"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/shafts/{id}": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** One version of a definition */
        get: operations["shaft"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/shafts/{id}/study": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** Ways of one shaft side by side: table, plots, which is best and why */
        get: operations["study"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/shafts/{id}/study/{file}": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** The study for the printer and for programs: study.pdf, study.csv, and each plot as PLOT.csv and PLOT.svg */
        get: operations["studyFile"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/shafts/{id}/pattern": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** The quietest arrangements: the list, what each leaves, what each mistake in timing would do to the advised one */
        get: operations["pattern"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/shafts/{id}/pattern/{file}": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** The arrangements for the printer: pattern.pdf */
        get: operations["patternFile"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/shafts/{id}/bend": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** The shaft as a beam: reactions of the hangers, deflection and stress by station, critical speeds, what each rotor does to each hanger */
        get: operations["bend"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/shafts/{id}/bend/{file}": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** The response over speed for programs: response.csv */
        get: operations["bendFile"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/shafts/{id}/bearing": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** What the wobble does to a bearing through a turn of the shaft, and how long it lasts */
        get: operations["bearing"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/jobs": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** A job by its number, or the open jobs */
        get: operations["jobByNumber"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/jobs/{id}": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** One job's record card */
        get: operations["job"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/jobs/{id}/entries": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** Entries of a job, in the order stored */
        get: operations["entries"];
        put?: never;
        /** Entries to be kept, all or none. Sent twice they are kept once. The first of a job books it in. */
        post: operations["record"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/jobs/{id}/bench": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** The bench screen: strip, sheet of one station in one stage, next step */
        get: operations["bench"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/jobs/{id}/report": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** Everything the rules say of a job, with every working */
        get: operations["report"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/jobs/{id}/sheets/{name}": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** A sheet for the printer */
        get: operations["sheet"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/gauges": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** Gauges with their dates: what is overdue first */
        get: operations["gauges"];
        put?: never;
        /** A gauge more, with its first calibration */
        post: operations["addGauge"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/calibrations": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /** A calibration noted: the earlier ones stay */
        post: operations["noteCalibration"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/stock": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** Parts on the shelf and on order */
        get: operations["stock"];
        put?: never;
        /** Parts counted, laid in or taken */
        post: operations["moveStock"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/stock/moves": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** Moves of parts, newest first */
        get: operations["stockMoves"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/parts": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /** A part named, and how many should always lie there */
        post: operations["putPart"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/figures": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** Every figure: its section, formula, inputs with their units and ranges, outputs, sources, limits and an example */
        get: operations["figures"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/figures/{name}": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /** One figure worked out: the working, and where an input was given with a doubt what that makes of the result and which input to measure better */
        post: operations["figure"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/blobs/{hash}": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** A photo or recording */
        get: operations["blob"];
        /** A photo, before the entry that names it */
        put: operations["putBlob"];
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/events": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** What changes, as it happens (server-sent events) */
        get: operations["events"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/letin": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /** A tablet shows the one-time code that stands at the server */
        post: operations["letIn"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/letin/offer": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /** A code that lets one more tablet in, shown on the page of one that is in */
        post: operations["offerLetIn"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/tablets": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** Devices that were let in */
        get: operations["tablets"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/tablets/{id}/take-back": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /** The token of that device holds no more: it must be let in again */
        post: operations["takeBackTablet"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
}
export type webhooks = Record<string, never>;
export interface components {
    schemas: {
        /** @description A UUID in lower case (RFC 9562); version 7 where the client makes it. */
        Id: string;
        /** @description SHA-256 in hex. */
        Hash: string;
        /** @description UTC with milliseconds. */
        Instant: string;
        Day: string;
        /** @enum {string} */
        Stage: "booking_in" | "finding" | "plan" | "teardown" | "inspection" | "kit" | "press" | "timing" | "stack" | "torque" | "test_run" | "release";
        /** @enum {string} */
        Role: "bench" | "lead" | "owner";
        /** @enum {string} */
        Tone: "plain" | "strong" | "second" | "in" | "out" | "tell" | "next";
        /** @enum {string} */
        Flag: "none" | "done" | "stopped" | "waits" | "unknown";
        /**
         * EntryBody
         * @description What an entry says: one object a kind. Quantities are text with their unit, as typed.
         */
        EntryBody: {
            /** @constant */
            kind: "booked_in";
            /** @description number: of the job, or of the part asked about (0: the shaft) */
            number: string;
            /** @description id of the machine */
            machine: string;
            /** @description id of the version of the definition */
            shaft: string;
            /** @description in the customer's words */
            complaint: string;
            /**
             * @description hour meter
             * @example 11 min
             * @example 1 h 30 min
             * @example 90 s
             */
            hour_meter?: string;
            /** @description day it is wanted */
            due?: string;
        } | {
            /** @constant */
            kind: "answered";
            /** @description id of the question */
            question: string;
            /** @description number: of the job, or of the part asked about (0: the shaft) */
            number: number;
            /**
             * @description yes, no, or not seen
             * @enum {string}
             */
            reply: "yes" | "no" | "not_seen";
        } | {
            /** @constant */
            kind: "looked";
            /** @description which part; numbers count from end A, from 1; 0: the shaft */
            part: {
                /** @enum {string} */
                part: "shaft" | "station" | "rotor";
                number: number;
            };
            /**
             * @description stage of the bench
             * @enum {string}
             */
            stage: "booking_in" | "finding" | "plan" | "teardown" | "inspection" | "kit" | "press" | "timing" | "stack" | "torque" | "test_run" | "release";
            /**
             * @description what was looked for
             * @enum {string}
             */
            sign: "rough" | "hot" | "grease_out" | "noisy" | "sound";
            /**
             * @description yes, no, or not seen
             * @enum {string}
             */
            reply: "yes" | "no" | "not_seen";
        } | {
            /** @constant */
            kind: "play_read";
            /** @description rotor, counted from end A */
            rotor: number;
            /**
             * @description whole swing of the dial
             * @example 38.1 mm
             * @example 1 1/2 in
             * @example 12 µm
             * @example 0.5 thou
             */
            swing: string;
            /** @description id of the gauge; empty where there was none */
            gauge: string;
            /**
             * @description dial from the axis
             * @example 38.1 mm
             * @example 1 1/2 in
             * @example 12 µm
             * @example 0.5 thou
             */
            radius?: string;
            /**
             * @description what bore the rotor: carried in a sling or by hand, or hanging on its bearing; left out: taken as carried
             * @enum {string}
             */
            held?: "carried" | "hanging";
            /**
             * @description push at the dial, one way and the other, of a rotor that hung
             * @example 400 N
             * @example 25 kN
             * @example 90 lbf
             */
            push?: string;
        } | {
            /** @constant */
            kind: "photo_taken";
            /** @description which part; numbers count from end A, from 1; 0: the shaft */
            part: {
                /** @enum {string} */
                part: "shaft" | "station" | "rotor";
                number: number;
            };
            /**
             * @description stage of the bench
             * @enum {string}
             */
            stage: "booking_in" | "finding" | "plan" | "teardown" | "inspection" | "kit" | "press" | "timing" | "stack" | "torque" | "test_run" | "release";
            /** @description SHA-256 of the bytes */
            blob: string;
            /**
             * @description media type
             * @enum {string}
             */
            type: "image/jpeg" | "image/png" | "image/webp";
            /** @description what it shows */
            says: string;
        } | {
            /** @constant */
            kind: "note_written";
            /** @description which part; numbers count from end A, from 1; 0: the shaft */
            part: {
                /** @enum {string} */
                part: "shaft" | "station" | "rotor";
                number: number;
            };
            /**
             * @description stage of the bench
             * @enum {string}
             */
            stage: "booking_in" | "finding" | "plan" | "teardown" | "inspection" | "kit" | "press" | "timing" | "stack" | "torque" | "test_run" | "release";
            /** @description text */
            text: string;
        } | {
            /** @constant */
            kind: "way_chosen";
            /** @description rotors to open */
            open: number[];
            /**
             * @description what is renewed
             * @enum {string}
             */
            way: "failed_only" | "disturbed" | "all";
        } | {
            /** @constant */
            kind: "customer_said";
            /**
             * @description yes, no, or not seen
             * @enum {string}
             */
            reply: "yes" | "no" | "not_seen";
            /** @description who said it */
            who: string;
            /** @description by telephone, in person */
            how: string;
            /**
             * @description price agreed, with its currency
             * @example 18.40 EUR
             */
            price?: string;
        } | {
            /** @constant */
            kind: "ordered";
            /** @description part number */
            part_number: string;
            /** @description pieces */
            count: number;
            /** @description day it is expected */
            expected?: string;
        } | {
            /** @constant */
            kind: "received";
            /** @description part number */
            part_number: string;
            /** @description pieces */
            count: number;
        } | {
            /** @constant */
            kind: "step_done";
            /**
             * @description tear-down or the way back
             * @enum {string}
             */
            phase: "teardown" | "assembly";
            /** @description key of the step */
            step: string;
            /**
             * @description yes, no, or not seen
             * @enum {string}
             */
            reply: "yes" | "no" | "not_seen";
        } | {
            /** @constant */
            kind: "taken_off";
            /** @description station, counted from end A; 0: the shaft */
            station: number;
        } | {
            /** @constant */
            kind: "put_on";
            /** @description station, counted from end A; 0: the shaft */
            station: number;
        } | {
            /** @constant */
            kind: "bore_read";
            /** @description rotor, counted from end A */
            rotor: number;
            /**
             * @description plane of the bore
             * @enum {string}
             */
            plane: "A" | "B";
            /** @description which direction, clockwise from the stamped tine */
            direction: number;
            /** @description how many directions over half a turn */
            directions: number;
            /**
             * @description diameter as read
             * @example 38.1 mm
             * @example 1 1/2 in
             * @example 12 µm
             * @example 0.5 thou
             */
            diameter: string;
            /** @description id of the gauge; empty where there was none */
            gauge: string;
        } | {
            /** @constant */
            kind: "temperature_read";
            /** @description rotor, counted from end A */
            rotor: number;
            /**
             * @description what was measured
             * @enum {string}
             */
            what: "part" | "gauge";
            /**
             * @description temperature
             * @example 20 °C
             * @example 68 °F
             * @example 293.15 K
             */
            temperature: string;
            /** @description id of the thermometer; empty where it has none */
            thermometer: string;
        } | {
            /** @constant */
            kind: "set_renewed";
            /** @description rotor, counted from end A */
            rotor: number;
            /**
             * @description yes, no, or not seen
             * @enum {string}
             */
            reply: "yes" | "no" | "not_seen";
        } | {
            /** @constant */
            kind: "fitted_read";
            /** @description rotor, counted from end A */
            rotor: number;
            /** @description as stamped */
            designation: string;
        } | {
            /** @constant */
            kind: "lean_read";
            /** @description rotor, counted from end A */
            rotor: number;
            /**
             * @description adapter half, by its side
             * @enum {string}
             */
            half: "a" | "b";
            /**
             * @description lean
             * @example 5°
             * @example 2° 30′
             * @example 10′
             * @example 0.1 rad
             */
            angle: string;
        } | {
            /** @constant */
            kind: "ring_sound";
            /** @description rotor, counted from end A */
            rotor: number;
            /** @description 1 on the A side, 2 on the B side; at the press: which ring bore the tool */
            ring: number;
            /**
             * @description whether it is sound
             * @enum {string}
             */
            sound: "yes" | "no" | "not_seen";
        } | {
            /** @constant */
            kind: "laid";
            /** @description rotor, counted from end A */
            rotor: number;
            /**
             * @description what was counted
             * @enum {string}
             */
            item: "set" | "seal" | "snap_ring";
            /** @description pieces */
            count: number;
        } | {
            /** @constant */
            kind: "left_over";
            /** @description rotor, counted from end A */
            rotor: number;
            /**
             * @description what was counted
             * @enum {string}
             */
            item: "set" | "seal" | "snap_ring";
            /** @description pieces */
            count: number;
        } | {
            /** @constant */
            kind: "scrapped";
            /** @description rotor, counted from end A */
            rotor: number;
            /**
             * @description what was counted
             * @enum {string}
             */
            item: "set" | "seal" | "snap_ring";
            /** @description pieces */
            count: number;
        } | {
            /** @constant */
            kind: "pressed";
            /** @description rotor, counted from end A */
            rotor: number;
            /**
             * @description force
             * @example 400 N
             * @example 25 kN
             * @example 90 lbf
             */
            force: string;
            /** @description id of the gauge; empty where there was none */
            gauge: string;
        } | {
            /** @constant */
            kind: "ring_pressed_seen";
            /** @description rotor, counted from end A */
            rotor: number;
            /**
             * @description 1 on the A side, 2 on the B side; at the press: which ring bore the tool
             * @enum {string}
             */
            ring: "outer" | "inner" | "not_seen";
        } | {
            /** @constant */
            kind: "mark_seen";
            /** @description rotor, counted from end A */
            rotor: number;
            /**
             * @description adapter half, by its side
             * @enum {string}
             */
            half: "a" | "b";
            /** @description flat, clockwise seen from end A */
            flat: number;
        } | {
            /** @constant */
            kind: "label_put_back";
            /** @description place, counted from end A */
            position: number;
            /** @description label; empty where it had none */
            label: string;
        } | {
            /** @constant */
            kind: "stack_read";
            /**
             * @description length
             * @example 38.1 mm
             * @example 1 1/2 in
             * @example 12 µm
             * @example 0.5 thou
             */
            length: string;
            /** @description id of the gauge; empty where there was none */
            gauge: string;
        } | {
            /** @constant */
            kind: "feeler_tried";
            /** @description joint, counted from end A */
            joint: number;
            /** @description whether the blade went in */
            passed: boolean;
            /**
             * @description thickness of the blade
             * @example 38.1 mm
             * @example 1 1/2 in
             * @example 12 µm
             * @example 0.5 thou
             */
            blade?: string;
            /** @description id of the gauge; empty where there was none */
            gauge: string;
        } | {
            /** @constant */
            kind: "part_measured";
            /** @description station, counted from end A; 0: the shaft */
            station: number;
            /**
             * @description adapter half, by its side
             * @enum {string}
             */
            half?: "a" | "b";
            /**
             * @description length
             * @example 38.1 mm
             * @example 1 1/2 in
             * @example 12 µm
             * @example 0.5 thou
             */
            length: string;
            /** @description id of the gauge; empty where there was none */
            gauge: string;
        } | {
            /** @constant */
            kind: "nut_pulled";
            /**
             * @description nut, by its end
             * @enum {string}
             */
            nut: "a" | "b";
            /**
             * @description wrench, or a bar with a pull gauge
             * @enum {string}
             */
            with: "wrench" | "bar";
            /** @description torque at the wrench, or pull at the bar */
            shown: string;
            /** @description id of the gauge; empty where there was none */
            gauge: string;
            /**
             * @description nut to the middle of the grip
             * @example 38.1 mm
             * @example 1 1/2 in
             * @example 12 µm
             * @example 0.5 thou
             */
            tool_length?: string;
            /**
             * @description length of the extension
             * @example 38.1 mm
             * @example 1 1/2 in
             * @example 12 µm
             * @example 0.5 thou
             */
            extension?: string;
            /**
             * @description extension against the wrench
             * @example 5°
             * @example 2° 30′
             * @example 10′
             * @example 0.1 rad
             */
            extension_angle?: string;
            /**
             * @description pull against the tool
             * @example 5°
             * @example 2° 30′
             * @example 10′
             * @example 0.1 rad
             */
            pull_angle?: string;
            /** @description ratio of a multiplier; 1: none */
            multiplier: number;
            /**
             * @description turn of the nut: from snug, or on the second pull
             * @example 5°
             * @example 2° 30′
             * @example 10′
             * @example 0.1 rad
             */
            turned?: string;
        } | {
            /** @constant */
            kind: "run_read";
            /**
             * @description what was measured
             * @enum {string}
             */
            what: "room" | "hanger" | "vibration" | "minutes";
            /** @description station, counted from end A; 0: the shaft */
            station: number;
            /** @description value with its unit */
            value: string;
            /** @description id of the gauge; empty where there was none */
            gauge: string;
        } | {
            /** @constant */
            kind: "second_look";
            /** @description rotor, counted from end A */
            rotor: number;
            /**
             * @description whether they were right
             * @enum {string}
             */
            right: "yes" | "no" | "not_seen";
        } | {
            /** @constant */
            kind: "gauge_accepted";
            /** @description id of the gauge; empty where there was none */
            gauge: string;
            /** @description why */
            reason: string;
        } | {
            /** @constant */
            kind: "signed";
            /**
             * @description as what
             * @enum {string}
             */
            as: "bench" | "lead" | "owner";
        } | {
            /** @constant */
            kind: "released";
            /** @description released although something is open */
            forced: boolean;
            /** @description why */
            reason: string;
        } | {
            /** @constant */
            kind: "withdrawn";
            /** @description why */
            reason: string;
        } | {
            /** @constant */
            kind: "opened_by";
            /**
             * @description from end A, from end B or from both
             * @enum {string}
             */
            from: "a" | "b" | "both";
            /** @description with both ends: rotors 1 to this one came off at end A; 0: as it is cheapest */
            rotors_from_a: number;
        } | {
            /** @constant */
            kind: "spacers_found";
            /**
             * @description tear-down or the way back
             * @enum {string}
             */
            phase: "teardown" | "assembly";
            /** @description station, counted from end A; 0: the shaft */
            station: number;
            /** @description pieces */
            count: number;
            /** @description label; empty where it had none */
            label: string;
        } | {
            /** @constant */
            kind: "nut_pulled_again";
            /**
             * @description nut, by its end
             * @enum {string}
             */
            nut: "a" | "b";
            /**
             * @description turn of the nut: from snug, or on the second pull
             * @example 5°
             * @example 2° 30′
             * @example 10′
             * @example 0.1 rad
             */
            turned: string;
            /** @description id of the gauge; empty where there was none */
            gauge: string;
        } | {
            /** @constant */
            kind: "press_point_read";
            /** @description rotor, counted from end A */
            rotor: number;
            /** @description number of the point, as they were read */
            point: number;
            /**
             * @description way in, from where ring and hub met
             * @example 38.1 mm
             * @example 1 1/2 in
             * @example 12 µm
             * @example 0.5 thou
             */
            travel: string;
            /**
             * @description force
             * @example 400 N
             * @example 25 kN
             * @example 90 lbf
             */
            force: string;
            /** @description id of the gauge; empty where there was none */
            gauge: string;
        } | {
            /** @constant */
            kind: "tool_taken";
            /**
             * @description nut, by its end
             * @enum {string}
             */
            nut: "a" | "b";
            /**
             * @description length
             * @example 38.1 mm
             * @example 1 1/2 in
             * @example 12 µm
             * @example 0.5 thou
             */
            length: string;
            /**
             * @description length of the extension
             * @example 38.1 mm
             * @example 1 1/2 in
             * @example 12 µm
             * @example 0.5 thou
             */
            extension?: string;
            /**
             * @description ratio of a torque multiplier, a plain number
             * @example 0.12
             * @example 12 %
             */
            ratio?: string;
        };
        /** @description What an entry will say; the client adds id, by, on, at and follows. */
        EntryDraft: {
            corrects: components["schemas"]["Id"][];
            /** @description As EntryBody; what is still to be typed or chosen is empty or missing in it. */
            body: {
                kind: string;
            } & {
                [key: string]: unknown;
            };
        };
        EntryIn: {
            id: components["schemas"]["Id"];
            by: components["schemas"]["Id"];
            on: string;
            /** @description By the clock of the device. At most a day ahead of the server's; no more than a day before the job was booked in. */
            at: components["schemas"]["Instant"];
            /** @description The last entry of the job that its author had seen; null where there was none. What came in between was not seen: it is kept beside, never overwritten, and the rules count it. */
            follows: components["schemas"]["Id"] | null;
            corrects: components["schemas"]["Id"][];
            body: components["schemas"]["EntryBody"];
        };
        EntriesIn: {
            entries: components["schemas"]["EntryIn"][];
        };
        EntryStored: {
            id: components["schemas"]["Id"];
            by: components["schemas"]["Id"];
            on: string;
            at: components["schemas"]["Instant"];
            /** @description The last entry of the job that its author had seen; null where there was none. What came in between was not seen: it is kept beside, never overwritten, and the rules count it. */
            follows: components["schemas"]["Id"] | null;
            corrects: components["schemas"]["Id"][];
            body: components["schemas"]["EntryBody"];
            number: number;
            before: components["schemas"]["Hash"] | null;
            hash: components["schemas"]["Hash"];
            says?: string;
            by_name?: string;
            /** @description When the server took it in, by its own clock; hashed with the rest. Gauges are judged by the later of this and `at`. Absent for entries made at the server itself, and from before it was kept. */
            received?: components["schemas"]["Instant"];
        };
        Entries: {
            entries: components["schemas"]["EntryStored"][];
        };
        Saved: {
            saved: {
                id: components["schemas"]["Id"];
                number: number;
                hash: components["schemas"]["Hash"];
                fresh: boolean;
            }[];
            head: components["schemas"]["Hash"];
            sequence: number;
        };
        Problem: {
            code: string;
            field: string;
            given: string;
            read: string;
            allowed: string;
            mend: string;
            place?: {
                file: string;
                line: number;
                column: number;
                quoted?: string;
            };
        };
        /** @description RFC 9457, application/problem+json. */
        ProblemDetails: {
            type: string;
            title: string;
            status: number;
            detail?: string;
            problems?: components["schemas"]["Problem"][];
        };
        PathItem: {
            /** @constant */
            item: "path";
            points: number[][];
            closed: boolean;
            /** @enum {string} */
            stroke: "none" | "narrow" | "wide" | "heavy" | "hidden" | "axis" | "wanted" | "part";
            /** @enum {string} */
            fill: "none" | "sheet" | "solid" | "tone" | "ink" | "cut" | "cut_next" | "renew" | "next";
            /** @enum {string} */
            ink: "ink" | "second" | "next" | "in" | "out" | "tell" | "sheet";
            id?: string;
        };
        /** @description Degrees clockwise from 12 o'clock. */
        ArcItem: {
            /** @constant */
            item: "arc";
            centre: number[];
            radius: number;
            from: number;
            to: number;
            /** @enum {string} */
            stroke: "none" | "narrow" | "wide" | "heavy" | "hidden" | "axis" | "wanted" | "part";
            /** @enum {string} */
            fill: "none" | "sheet" | "solid" | "tone" | "ink" | "cut" | "cut_next" | "renew" | "next";
            /** @enum {string} */
            ink: "ink" | "second" | "next" | "in" | "out" | "tell" | "sheet";
            id?: string;
        };
        TextItem: {
            /** @constant */
            item: "text";
            at: number[];
            text: string;
            size: number;
            bold: boolean;
            /** @enum {string} */
            anchor: "start" | "middle" | "end";
            /** @enum {string} */
            ink: "ink" | "second" | "next" | "in" | "out" | "tell" | "sheet";
            id?: string;
            width?: number;
            on_solid?: boolean;
        };
        CodeItem: {
            /** @constant */
            item: "code";
            at: number[];
            side: number;
            text: string;
        };
        /** @description Millimetres, y downwards. Ids say what a tap on an item means. */
        DisplayList: {
            width: number;
            height: number;
            items: (components["schemas"]["PathItem"] | components["schemas"]["ArcItem"] | components["schemas"]["TextItem"] | components["schemas"]["CodeItem"])[];
        };
        Working: components["schemas"]["Common_working"];
        /** @description Where a tap leads: what is not named stays as it is. */
        Go: {
            stage?: components["schemas"]["Stage"];
            station?: number;
            /** @enum {string} */
            from?: "a" | "b";
            step?: number;
            /** @enum {string} */
            page?: "board" | "machine" | "shaft" | "people" | "job";
            id?: string;
        };
        /** @description record: entries to save, then perhaps go on; key: the question that the entries answer. open: an address under /api, a sheet for the printer. */
        Do: {
            record: components["schemas"]["EntryDraft"][];
            go?: components["schemas"]["Go"];
            key?: string;
        } | {
            go: components["schemas"]["Go"];
        } | {
            open: string;
        };
        /** @description A key. blocked: why it cannot be pressed yet. */
        Action: {
            label: string;
            /** @enum {string} */
            tone: "next" | "plain";
            do: components["schemas"]["Do"];
            blocked?: string;
            says?: string;
        };
        Said: {
            entry: components["schemas"]["Id"];
            number: number;
            shown: string;
            by: string;
            at: components["schemas"]["Instant"];
        };
        Choice: {
            label: string;
            draft: components["schemas"]["EntryDraft"];
            chosen: boolean;
            tone?: components["schemas"]["Tone"];
        };
        /** @description said: live answers; two that differ are not agreed and both show. undo takes the answer back. */
        Question: {
            key: string;
            label: string;
            choices: components["schemas"]["Choice"][];
            said: components["schemas"]["Said"][];
            agreed: boolean;
            detail?: string;
            undo?: components["schemas"]["EntryDraft"];
            tone?: components["schemas"]["Tone"];
        };
        /** @description One figure to be typed: the text goes into body[into], the gauge into body[gauge_into]. kind is a kind of quantity, or 'text', 'count', 'number' (no unit, kept as typed). marks: ids in the drawing to show as chosen while it is typed. next: key of the field that follows. */
        Field: {
            key: string;
            title: string;
            label: string;
            kind: string;
            units: string[];
            unit: string;
            draft: components["schemas"]["EntryDraft"];
            into: string;
            said: components["schemas"]["Said"][];
            agreed: boolean;
            before?: {
                label: string;
                typed: string;
            };
            reference?: {
                label: string;
                value: number;
                unit: string;
            };
            gauges?: {
                id: string;
                label: string;
                chosen: boolean;
                overdue?: boolean;
            }[];
            gauge_into?: string;
            hint?: string;
            marks?: string[];
            undo?: components["schemas"]["EntryDraft"];
            next?: string;
        };
        TextBlock: {
            /** @constant */
            block: "text";
            says: string;
            /** @enum {string} */
            size: "note" | "read" | "head" | "verdict";
            tone: components["schemas"]["Tone"];
        };
        CautionBlock: {
            /** @constant */
            block: "caution";
            head: string;
            lines: string[];
            rule?: string;
        };
        Fact: {
            caption: string;
            value: string;
            tone?: components["schemas"]["Tone"];
            other?: string;
            working?: components["schemas"]["Working"];
        };
        FactsBlock: {
            /** @constant */
            block: "facts";
            rows: components["schemas"]["Fact"][];
        };
        /** @description field: chooses that field of the keypad instead. */
        Tap: {
            id: string;
            says: string;
            do: components["schemas"]["Do"];
            field?: string;
        };
        DrawingBlock: {
            /** @constant */
            block: "drawing";
            list: components["schemas"]["DisplayList"];
            says: string;
            taps: components["schemas"]["Tap"][];
            chosen?: string[];
            caption?: string;
            wide?: boolean;
        };
        SwitchBlock: {
            /** @constant */
            block: "switch";
            label: string;
            choices: {
                label: string;
                go: components["schemas"]["Go"];
                chosen: boolean;
            }[];
        };
        AsksBlock: {
            /** @constant */
            block: "asks";
            /** @enum {string} */
            style: "rows" | "chips";
            questions: components["schemas"]["Question"][];
            head?: string;
        };
        KeypadBlock: {
            /** @constant */
            block: "keypad";
            fields: components["schemas"]["Field"][];
            first?: string;
        };
        GridBlock: {
            /** @constant */
            block: "grid";
            head: string[];
            rows: {
                label: string;
                cells: {
                    text: string;
                    field?: string;
                    tone?: components["schemas"]["Tone"];
                }[];
            }[];
            caption?: string;
        };
        AnswerBlock: {
            /** @constant */
            block: "answer";
            /** @enum {string} */
            sign: "in" | "out" | "tell" | "done" | "stopped" | "waits" | "unknown" | "none";
            word: string;
            says: string[];
            value?: string;
            other?: string;
            bar?: components["schemas"]["DisplayList"];
            do?: string;
            working?: components["schemas"]["Working"];
        };
        WorkingBlock: {
            /** @constant */
            block: "working";
            open: boolean;
            about: string;
            working: components["schemas"]["Working"];
        };
        Cell: {
            text: string;
            tone?: components["schemas"]["Tone"];
            flag?: components["schemas"]["Flag"];
            /** @enum {string} */
            sign?: "in" | "out" | "tell";
            detail?: string;
            bar?: components["schemas"]["DisplayList"];
        };
        TableBlock: {
            /** @constant */
            block: "table";
            head: {
                text: string;
                /** @enum {string} */
                align: "left" | "right";
            }[];
            rows: {
                cells: components["schemas"]["Cell"][];
                chosen?: boolean;
                /** @description In the heavy frame. */
                advised?: boolean;
                action?: components["schemas"]["Action"];
            }[];
            caption?: string;
            aside?: string;
        };
        StandingBlock: {
            /** @constant */
            block: "standing";
            complete: boolean;
            head: string;
            aside: string;
            rows: {
                part: string;
                what: string;
                lifted_by: string;
                action?: components["schemas"]["Action"];
                detail?: string;
            }[];
            force?: {
                label: string;
                reason_label: string;
                draft: components["schemas"]["EntryDraft"];
                into: string;
            };
        };
        WaysBlock: {
            /** @constant */
            block: "ways";
            ways: {
                name: string;
                label: string;
                advised: boolean;
                chosen: boolean;
                strip: components["schemas"]["DisplayList"];
                action: components["schemas"]["Action"];
            }[];
            rows: {
                label: string;
                cells: components["schemas"]["Cell"][];
            }[];
            says?: string[];
        };
        StepBlock: {
            /** @constant */
            block: "step";
            number: number;
            of: number;
            says: string;
            cautions: components["schemas"]["CautionBlock"][];
            tools: string[];
            labels: string[];
            stop: boolean;
            note?: string;
            drawing?: components["schemas"]["DrawingBlock"];
            question?: components["schemas"]["Question"];
            action?: components["schemas"]["Action"];
            back?: components["schemas"]["Action"];
        };
        ActionsBlock: {
            /** @constant */
            block: "actions";
            actions: components["schemas"]["Action"][];
        };
        PhotosBlock: {
            /** @constant */
            block: "photos";
            photos: {
                blob: components["schemas"]["Hash"];
                says: string;
                by: string;
                at: components["schemas"]["Instant"];
            }[];
            draft: components["schemas"]["EntryDraft"];
        };
        NoteBlock: {
            /** @constant */
            block: "note";
            label: string;
            draft: components["schemas"]["EntryDraft"];
            into: string;
            said: components["schemas"]["Said"][];
        };
        /** @description Two people answered differently: both show, somebody decides. */
        DisagreeBlock: {
            /** @constant */
            block: "disagree";
            head: string;
            answers: components["schemas"]["Said"][];
            choices: components["schemas"]["Choice"][];
        };
        LogBlock: {
            /** @constant */
            block: "log";
            entries: {
                number: number;
                says: string;
                by: string;
                at: components["schemas"]["Instant"];
                corrected_by?: number;
                withdrawn_by?: number;
            }[];
            head?: string;
        };
        SignaturesBlock: {
            /** @constant */
            block: "signatures";
            rows: {
                role: string;
                says: string;
                signed?: {
                    by: string;
                    at: components["schemas"]["Instant"];
                };
                action?: components["schemas"]["Action"];
            }[];
        };
        Block: components["schemas"]["TextBlock"] | components["schemas"]["CautionBlock"] | components["schemas"]["FactsBlock"] | components["schemas"]["DrawingBlock"] | components["schemas"]["SwitchBlock"] | components["schemas"]["AsksBlock"] | components["schemas"]["KeypadBlock"] | components["schemas"]["GridBlock"] | components["schemas"]["AnswerBlock"] | components["schemas"]["WorkingBlock"] | components["schemas"]["TableBlock"] | components["schemas"]["StandingBlock"] | components["schemas"]["WaysBlock"] | components["schemas"]["StepBlock"] | components["schemas"]["ActionsBlock"] | components["schemas"]["PhotosBlock"] | components["schemas"]["NoteBlock"] | components["schemas"]["DisagreeBlock"] | components["schemas"]["LogBlock"] | components["schemas"]["SignaturesBlock"];
        /** @description The selected station in the present stage. head and foot go across; left and right are the columns. shut: why it stays empty. */
        Sheet: {
            title: string;
            left: components["schemas"]["Block"][];
            right: components["schemas"]["Block"][];
            head: components["schemas"]["Block"][];
            foot: components["schemas"]["Block"][];
            aside?: string;
            shut?: string;
        };
        /** @description A station's cell in the rail. from and to: where the part lies in the strip, mm. sub: marks or count. said: as read aloud. */
        StationCell: {
            index: number;
            /** @enum {string} */
            kind: "nut" | "washer" | "spacer" | "rotor" | "hanger" | "pulley" | "shoulder" | "other";
            name: string;
            word: string;
            flag: components["schemas"]["Flag"];
            /** @enum {string} */
            body: "on" | "off";
            renew: boolean;
            chosen: boolean;
            /**
             * @description Where the cell stands; none: too thin for a cell of its own, a tap on it is taken for its neighbour.
             * @enum {string}
             */
            rail: "top" | "bottom" | "none";
            from: number;
            to: number;
            said: string;
            sub?: string;
            touched?: boolean;
            tone?: components["schemas"]["Tone"];
        };
        Strip: {
            list: components["schemas"]["DisplayList"];
            low: boolean;
            stations: components["schemas"]["StationCell"][];
            says: string;
        };
        StageMark: {
            stage: components["schemas"]["Stage"];
            word: string;
            /** @enum {string} */
            progress: "to_come" | "open" | "passed";
            present: boolean;
        };
        /** @description Questions before a stage, in the yellow band. */
        Band: {
            head: string;
            rule: string;
            questions: components["schemas"]["Question"][];
        };
        NextLine: {
            does: string;
            stage: components["schemas"]["Stage"];
            because?: string;
            detail?: string;
            blocked?: boolean;
            action?: components["schemas"]["Action"];
        };
        BenchView: {
            job: {
                id: components["schemas"]["Id"];
                number: string;
                head: components["schemas"]["Hash"];
                entries: number;
                last: components["schemas"]["Id"];
                machine: components["schemas"]["Id"];
                released: boolean;
            };
            title: {
                shaft: string;
                job: string;
                workshop: string;
                invented: boolean;
                stage: string;
                units: string;
            };
            stage: components["schemas"]["Stage"];
            station: number;
            /** @enum {string} */
            from: "a" | "b";
            stages: components["schemas"]["StageMark"][];
            strip: components["schemas"]["Strip"];
            sheet: components["schemas"]["Sheet"];
            next: components["schemas"]["NextLine"];
            disagreements: number;
            band?: components["schemas"]["Band"];
        };
        JobRecord: {
            id: components["schemas"]["Id"];
            number: string;
            machine: components["schemas"]["Id"];
            shaft_version: components["schemas"]["Id"];
            stage: components["schemas"]["Stage"];
            waiting: string;
            booked: components["schemas"]["Instant"];
            changed: components["schemas"]["Instant"];
            released: boolean;
            entries: number;
            head: components["schemas"]["Hash"];
            due?: components["schemas"]["Day"];
        };
        JobRecords: {
            jobs: components["schemas"]["JobRecord"][];
        };
        BoardRow: {
            job: components["schemas"]["Id"];
            number: string;
            name: string;
            state: string;
            flag: components["schemas"]["Flag"];
            tone: components["schemas"]["Tone"];
            stages: components["schemas"]["StageMark"][];
            strip: components["schemas"]["DisplayList"];
            next: string;
            stage: components["schemas"]["Stage"];
            because?: string;
            due?: string;
            customer?: string;
            late?: boolean;
        };
        Board: {
            workshop: string;
            invented: boolean;
            head: string;
            rows: components["schemas"]["BoardRow"][];
        };
        Person: {
            id: components["schemas"]["Id"];
            name: string;
            role: components["schemas"]["Role"];
            active?: boolean;
        };
        People: {
            people: components["schemas"]["Person"][];
        };
        AtWorkIn: {
            /** @description A lead or owner at work here. */
            by: components["schemas"]["Id"];
            active: boolean;
        };
        Customer: {
            id: components["schemas"]["Id"];
            name: string;
            reach?: string;
        };
        Customers: {
            customers: components["schemas"]["Customer"][];
        };
        Machine: {
            id: components["schemas"]["Id"];
            customer: components["schemas"]["Id"];
            name: string;
            shaft: components["schemas"]["Id"];
            invented?: boolean;
        };
        Machines: {
            machines: components["schemas"]["Machine"][];
        };
        HourReading: {
            id: components["schemas"]["Id"];
            /** @description Who read it. */
            by: components["schemas"]["Id"];
            /** @description Not still to come. */
            day: components["schemas"]["Day"];
            /** @description As typed: "1862 h". No less than before, no more than after, and no more than 24 h a day in between. */
            hours: string;
            note?: string;
            /** @description An earlier reading of this machine that counts no more. It stays to be seen. */
            corrects?: components["schemas"]["Id"];
            /** @description It reads so all the same (another meter was fitted). The note says why. */
            anyway?: boolean;
        };
        MachineView: {
            id: components["schemas"]["Id"];
            name: string;
            customer: string;
            workshop: string;
            invented: boolean;
            facts: components["schemas"]["Fact"][];
            drawing: components["schemas"]["DisplayList"];
            says: string;
            stations: components["schemas"]["StationCell"][];
            jobs: {
                job: components["schemas"]["Id"] | null;
                number: string;
                day: string;
                hours: string;
                says: string;
            }[];
            blocks: components["schemas"]["Block"][];
            /** @description Of the hour meter, the newest first; those that were corrected too. */
            readings: {
                id: components["schemas"]["Id"];
                day: components["schemas"]["Day"];
                /** @description The day as people write it. */
                on: string;
                says: string;
                /** @description Name; empty: nobody by name. */
                by: string;
                note?: string;
                /** @description It counts no more. */
                corrected: boolean;
            }[];
        };
        ShaftRecord: {
            id: components["schemas"]["Id"];
            shaft: components["schemas"]["Id"];
            version: number;
            name: string;
            toml: string;
            by?: string;
            at?: components["schemas"]["Instant"];
            invented?: boolean;
            strip?: components["schemas"]["DisplayList"];
        };
        Shafts: {
            shafts: components["schemas"]["ShaftRecord"][];
        };
        /** @description A new version; seen is the one it was made from, 0 for a new shaft. */
        ShaftIn: {
            id: components["schemas"]["Id"];
            shaft: components["schemas"]["Id"];
            by: components["schemas"]["Id"];
            seen: number;
            toml: string;
        };
        ShaftText: {
            toml: string;
            /** @description The text it was copied from: lines of the five that still say the same are told as 'as_copied'. */
            copied?: string;
        };
        ShaftCheck: {
            problems: components["schemas"]["Problem"][];
            facts: components["schemas"]["Fact"][];
            lines: {
                line: number;
                /** @description The field as it stands in the text. */
                key: string;
                /** @description What is written behind it. */
                value: string;
                number: number;
                /** @enum {string} */
                state: "as_copied" | "wrong" | "done";
            }[];
            /** @description Which parts of the drawing hang on what is written in a line: by their places in the strip. Only where it could be drawn. */
            hangs?: {
                line: number;
                stations: number[];
            }[];
            /** @description Where a problem can be mended in a few ways: each as the whole line, and what would follow. None is better than another. */
            mends?: {
                line: number;
                label: string;
                text: string;
                says?: string;
            }[];
            strip?: components["schemas"]["Strip"];
            name?: string;
            /** @description Rotor 1 from end A, its marks where the pattern wants them. Only where it could be drawn. */
            end_view?: {
                list: components["schemas"]["DisplayList"];
                says: string;
                title: string;
            };
            /** @description What nobody gave: the value that is taken, and why this one. Only where it could be drawn. */
            assumed?: {
                caption: string;
                value: string;
                why: string;
            }[];
        };
        Workshop: {
            name: string;
            invented: boolean;
            people: components["schemas"]["Person"][];
            gauges: components["schemas"]["GaugeRow"][];
            own_shafts: boolean;
            demo_job: components["schemas"]["Id"] | null;
            currency?: string;
        };
        GaugeRow: {
            id: string;
            use: string;
            label: string;
            calibrated_until: components["schemas"]["Day"];
            overdue: boolean;
        };
        StockRow: {
            part_number: string;
            name: string;
            on_shelf: number;
            on_order: number;
            /** @description What should always lie there; nought: nobody said. */
            least: number;
            /** @description What open jobs still take from the shelf. */
            reserved: number;
            /** @description On the shelf less reserved; below nought: short. */
            left: number;
            jobs: {
                job: components["schemas"]["Id"];
                number: string;
                count: number;
            }[];
            flag: components["schemas"]["Flag"];
            tone: components["schemas"]["Tone"];
            state: string;
            /** @description Of name and least: sent as If-Match with a change of them. */
            tag?: string;
        };
        Stock: {
            head: string;
            stock: components["schemas"]["StockRow"][];
        };
        StockMove: {
            id: components["schemas"]["Id"];
            by: components["schemas"]["Id"];
            part_number: string;
            /** @enum {string} */
            reason: "counted" | "ordered" | "received" | "scrapped";
            /** @description Change of what lies on the shelf; nought with a count. */
            shelf: number;
            /** @description Change of what is on order. */
            order: number;
            /** @description With reason counted: how many lie there. */
            counted?: number;
            why: string;
        };
        PartIn: {
            by: components["schemas"]["Id"];
            part_number: string;
            name: string;
            least: number;
        };
        StockMoves: {
            moves: {
                id: components["schemas"]["Id"];
                part_number: string;
                shelf: number;
                order: number;
                counted?: number;
                /** @description In words: "counted", "job 31". */
                reason: string;
                /** @description What was remarked. */
                why: string;
                /** @description Name of who moved it; empty: nobody by name. */
                by: string;
                at: components["schemas"]["Instant"];
            }[];
        };
        CalibrationNote: {
            id: components["schemas"]["Id"];
            day?: string;
            until: string;
            expanded: string;
            who: string;
            certificate: string;
            by: string;
            at: components["schemas"]["Instant"];
            /** @description A later one replaces it. */
            corrected: boolean;
        };
        GaugeCard: {
            id: string;
            /** @enum {string} */
            use: "bore_gauge" | "thermometer" | "length" | "feeler" | "wrench" | "press_gauge" | "vibration_meter";
            label: string;
            resolution: string;
            /** @description U of the certificate that holds, k = 2. */
            expanded: string;
            /** @description Day of the certificate that holds, where it is known. */
            calibrated?: string;
            until: string;
            flag: components["schemas"]["Flag"];
            tone: components["schemas"]["Tone"];
            state: string;
            overdue: boolean;
            /** @description Units that U is typed in, the common ones first. */
            units: string[];
            /** @description U may be a share of the reading: "4 %". */
            share: boolean;
            came_with?: string;
            /** @description Newest first. */
            notes: components["schemas"]["CalibrationNote"][];
        };
        GaugesView: {
            workshop: string;
            invented: boolean;
            head: string;
            gauges: components["schemas"]["GaugeCard"][];
        };
        CalibrationIn: {
            id: components["schemas"]["Id"];
            by: components["schemas"]["Id"];
            gauge: string;
            /** @description U, k = 2, as typed: "2 µm", or "4 %" of the reading. */
            expanded: string;
            day: components["schemas"]["Day"];
            until: components["schemas"]["Day"];
            who: string;
            certificate: string;
            corrects?: components["schemas"]["Id"];
        };
        GaugeIn: {
            id: components["schemas"]["Id"];
            by: components["schemas"]["Id"];
            gauge: string;
            /** @enum {string} */
            use: "bore_gauge" | "thermometer" | "length" | "feeler" | "wrench" | "press_gauge" | "vibration_meter";
            /** @description As typed: "0.01 mm". */
            resolution: string;
            /** @description U, k = 2, as typed: "2 µm", or "4 %" of the reading. */
            expanded: string;
            day: components["schemas"]["Day"];
            until: components["schemas"]["Day"];
            who: string;
            certificate: string;
            /** @description Least reading. */
            least?: string;
            /** @description Greatest reading. */
            greatest?: string;
            /** @description Diameter of its setting ring. */
            setting_ring?: string;
            /** @description U of the ring, k = 2. */
            setting_ring_expanded?: string;
            /** @description Standard deviation of one reading, from a study of its own. */
            repeatability?: string;
            repeatability_readings?: number;
        };
        LetInOffer: {
            /** @description As it is typed; it holds once. */
            code: string;
            /** @description Seconds from now. */
            holds: number;
            /** @description The page with the code in it, as the next device reaches it; left out where the server does not know one. */
            address?: string;
            /** @description The address as a code to scan (ISO/IEC 18004): rectangles of dark modules, x, y, width, height from the upper left, with a clear margin all round. */
            picture?: {
                side: number;
                quiet: number;
                dark: number[][];
            };
        };
        OfferLetIn: {
            by: components["schemas"]["Id"];
        };
        LetIn: {
            code: string;
            /** @description What this tablet is called here. */
            name?: string;
        };
        JobReport: Record<string, never>;
        PatternReport: Record<string, never>;
        BendReport: Record<string, never>;
        BearingReport: Record<string, never>;
        /** figure: every figure */
        Figures: {
            figures: components["schemas"]["FigureSpec"][];
        };
        FigureIn: {
            /** @description As typed at the shell: "bore=99.968 mm", with a doubt "bore=99.968 mm ± 4 µm" or "bore=99.96 mm .. 99.98 mm". An input that may stand many times is given many times. Those with an assumed value may be left out. */
            inputs: string[];
        };
        BlobSaved: {
            hash: components["schemas"]["Hash"];
            bytes: number;
        };
        /** @description One way of the shaft: a name and what is other than in the definition, as typed. pattern: 'facing', 'step 2', or the flat of half A of every rotor ('1 3 4 5 1'). speed: '540 /min'. lean: '3°', of every rotor. clearance: a group of new bearings ('C3'), or the clearance as it runs ('20 µm'). fit: of the hubs ('100 N7'), or the interference ('25 µm'). At least one of the five; for the shaft as it is defined, one of them as it stands there. */
        StudyWayIn: {
            name: string;
            pattern?: string;
            speed?: string;
            lean?: string;
            clearance?: string;
            fit?: string;
        };
        /** @description A column. changes: in words; empty for the shaft as it is defined, which 'defined' says too. badge: two or three words in black at the head of the column. The strips have one scale. says: the strip, aloud. */
        StudyWay: {
            name: string;
            asked: components["schemas"]["StudyWayIn"];
            changes: string[];
            defined: boolean;
            advised: boolean;
            badge?: string;
            strip: components["schemas"]["DisplayList"];
            says: string;
        };
        /** @description working: the place of its working among the study's figures. other: in the other units. detail: quiet, at the right edge ('floor: 0.7 ft·lb', 'nothing strikes'). drawing: instead of the value, which then stands beside it; says: the drawing, aloud. bad: this keeps the way from being advised. */
        StudyCell: {
            value: string;
            other?: string;
            detail?: string;
            says?: string;
            drawing?: components["schemas"]["DisplayList"];
            working?: number;
            bad?: boolean;
        };
        /** @description One cell a way. form: how large: 'large' is the couple left over; 'words' wrap. Rows in which no way differs from another are left out, but for those of the arrangement. */
        StudyRow: {
            /** @enum {string} */
            key: "couples" | "flats" | "couple" | "hanger" | "gap" | "say" | "build" | "speed" | "lean" | "clearance" | "interference" | "press" | "play" | "life" | "stress" | "critical" | "words";
            label: string;
            detail?: string;
            /** @enum {string} */
            form: "drawing" | "large" | "figure" | "words";
            cells: components["schemas"]["StudyCell"][];
        };
        /** @description Title and question are in the drawing already. differs: the ways differ in it; the others may be folded away. csv, svg: addresses under /api. */
        StudyPlot: {
            /** @enum {string} */
            key: "hanger" | "couple" | "response" | "life" | "press" | "play" | "balls";
            title: string;
            question: string;
            differs: boolean;
            drawing: components["schemas"]["DisplayList"];
            says: string;
            note?: string;
            csv: string;
            svg: string;
        };
        /** @description The advised way by its place among the ways, none where nothing that can be measured sets one apart. does: the line to act on. because: why, in one sentence. waits: that the choice is a change of the definition and waits for the lead. lines: what to write into the definition, where it is another than what stands there. */
        StudyFinding: {
            way: number | null;
            does: string;
            because: string;
            waits: string;
            lines?: string;
        };
        /** @description A field of StudyWayIn: what it is called, forms it takes, and what the definition has. */
        StudyOffer: {
            /** @enum {string} */
            field: "pattern" | "speed" | "lean" | "clearance" | "fit";
            label: string;
            example: string;
            defined: string;
        };
        /** @description An error by which the floor is made. field: the parameter that states it. value: as it would be typed. said: stated for this study; else assumed. */
        StudyError: {
            /** @enum {string} */
            field: "error_share" | "error_azimuth";
            label: string;
            value: string;
            said: boolean;
        };
        /** @description Two to six ways of one shaft side by side. facts: the cells of the title block. csv: the whole table. print: the PDF on either paper. */
        StudyView: {
            shaft: components["schemas"]["Id"];
            name: string;
            invented: boolean;
            facts: components["schemas"]["Fact"][];
            ways: components["schemas"]["StudyWay"][];
            rows: components["schemas"]["StudyRow"][];
            plots: components["schemas"]["StudyPlot"][];
            finding: components["schemas"]["StudyFinding"];
            workings: {
                about: string;
                working: components["schemas"]["Working"];
            }[];
            notes: string[];
            offers: components["schemas"]["StudyOffer"][];
            /** @description The workings of the cells, each once; where several inputs come from one working it stands at the first of them. */
            figures: components["schemas"]["Working"][];
            errors: components["schemas"]["StudyError"][];
            most_ways: number;
            csv: string;
            print: {
                a4: string;
                letter: string;
            };
        };
        Tablets: {
            tablets: {
                id: components["schemas"]["Id"];
                name: string;
                since?: components["schemas"]["Day"];
                /** @description The last day on which it asked for anything. */
                seen?: components["schemas"]["Day"];
                /** @description It is the one that asks. */
                here: boolean;
            }[];
        };
        TakeBackTablet: {
            /** @description A lead or owner. */
            by: components["schemas"]["Id"];
        };
        /** What the other schemas share */
        Common: unknown;
        /**
         * @description note: nothing to do; the others give exit status 1.
         * @enum {unknown}
         */
        Common_severity: "note" | "unanswered" | "cannot_tell" | "out";
        /** @enum {unknown} */
        Common_answer: "in" | "out" | "cannot_tell";
        /** @enum {unknown} */
        Common_kind: "length" | "area" | "angle" | "mass" | "time" | "force" | "torque" | "pressure" | "temperature" | "temperature_rise" | "angular_speed" | "frequency" | "speed" | "acceleration" | "inertia" | "unbalance" | "viscosity" | "expansion" | "energy" | "density" | "stiffness" | "section_modulus" | "second_moment" | "money" | "money_rate" | "ratio" | "count";
        /** @description A quantity: its value in the SI unit that the field's name ends in, and as it is shown to a person. */
        Common_quantity: {
            /** @enum {unknown} */
            kind: "length";
            value_m: number;
            shown: string;
        } | {
            /** @enum {unknown} */
            kind: "area";
            value_m2: number;
            shown: string;
        } | {
            /** @enum {unknown} */
            kind: "angle";
            value_rad: number;
            shown: string;
        } | {
            /** @enum {unknown} */
            kind: "mass";
            value_kg: number;
            shown: string;
        } | {
            /** @enum {unknown} */
            kind: "time";
            value_s: number;
            shown: string;
        } | {
            /** @enum {unknown} */
            kind: "force";
            value_n: number;
            shown: string;
        } | {
            /** @enum {unknown} */
            kind: "torque";
            value_n_m: number;
            shown: string;
        } | {
            /** @enum {unknown} */
            kind: "pressure";
            value_pa: number;
            shown: string;
        } | {
            /** @enum {unknown} */
            kind: "temperature" | "temperature_rise";
            value_k: number;
            shown: string;
        } | {
            /** @enum {unknown} */
            kind: "angular_speed";
            value_rad_s: number;
            shown: string;
        } | {
            /** @enum {unknown} */
            kind: "frequency";
            value_hz: number;
            shown: string;
        } | {
            /** @enum {unknown} */
            kind: "speed";
            value_m_s: number;
            shown: string;
        } | {
            /** @enum {unknown} */
            kind: "acceleration";
            value_m_s2: number;
            shown: string;
        } | {
            /** @enum {unknown} */
            kind: "inertia";
            value_kg_m2: number;
            shown: string;
        } | {
            /** @enum {unknown} */
            kind: "unbalance";
            value_kg_m: number;
            shown: string;
        } | {
            /** @enum {unknown} */
            kind: "viscosity";
            value_m2_s: number;
            shown: string;
        } | {
            /** @enum {unknown} */
            kind: "expansion";
            value_per_k: number;
            shown: string;
        } | {
            /** @enum {unknown} */
            kind: "energy";
            value_j: number;
            shown: string;
        } | {
            /** @enum {unknown} */
            kind: "density";
            value_kg_m3: number;
            shown: string;
        } | {
            /** @enum {unknown} */
            kind: "stiffness";
            value_n_per_m: number;
            shown: string;
        } | {
            /** @enum {unknown} */
            kind: "section_modulus";
            value_m3: number;
            shown: string;
        } | {
            /** @enum {unknown} */
            kind: "second_moment";
            value_m4: number;
            shown: string;
        } | {
            /** @enum {unknown} */
            kind: "money" | "ratio";
            value: number;
            shown: string;
        } | {
            /** @constant */
            kind: "count";
            value: number;
            shown: string;
        } | {
            /** @enum {unknown} */
            kind: "money_rate";
            value_per_s: number;
            shown: string;
        };
        /** @description A quantity, or a word out of a figure's choices. */
        Common_value: components["schemas"]["Common_quantity"] | {
            /** @constant */
            kind: "word";
            value: string;
        };
        /** @description Standard uncertainty, expanded uncertainty at 95 % two-sided, and the effective degrees of freedom where they are finite, in the unit of the value beside it; `shown`: the value with the expanded one in its unit and to its decimals, "99.984 ± 0.004 mm", missing where either has no end or the doubt is nought. */
        Common_uncertainty: {
            standard_m: number;
            expanded_m: number;
            degrees_of_freedom?: number;
            shown?: string;
        } | {
            standard_m2: number;
            expanded_m2: number;
            degrees_of_freedom?: number;
            shown?: string;
        } | {
            standard_rad: number;
            expanded_rad: number;
            degrees_of_freedom?: number;
            shown?: string;
        } | {
            standard_kg: number;
            expanded_kg: number;
            degrees_of_freedom?: number;
            shown?: string;
        } | {
            standard_s: number;
            expanded_s: number;
            degrees_of_freedom?: number;
            shown?: string;
        } | {
            standard_n: number;
            expanded_n: number;
            degrees_of_freedom?: number;
            shown?: string;
        } | {
            standard_n_m: number;
            expanded_n_m: number;
            degrees_of_freedom?: number;
            shown?: string;
        } | {
            standard_pa: number;
            expanded_pa: number;
            degrees_of_freedom?: number;
            shown?: string;
        } | {
            standard_k: number;
            expanded_k: number;
            degrees_of_freedom?: number;
            shown?: string;
        } | {
            standard_rad_s: number;
            expanded_rad_s: number;
            degrees_of_freedom?: number;
            shown?: string;
        } | {
            standard_hz: number;
            expanded_hz: number;
            degrees_of_freedom?: number;
            shown?: string;
        } | {
            standard_m_s: number;
            expanded_m_s: number;
            degrees_of_freedom?: number;
            shown?: string;
        } | {
            standard_m_s2: number;
            expanded_m_s2: number;
            degrees_of_freedom?: number;
            shown?: string;
        } | {
            standard_kg_m2: number;
            expanded_kg_m2: number;
            degrees_of_freedom?: number;
            shown?: string;
        } | {
            standard_kg_m: number;
            expanded_kg_m: number;
            degrees_of_freedom?: number;
            shown?: string;
        } | {
            standard_m2_s: number;
            expanded_m2_s: number;
            degrees_of_freedom?: number;
            shown?: string;
        } | {
            standard_per_k: number;
            expanded_per_k: number;
            degrees_of_freedom?: number;
            shown?: string;
        } | {
            standard_j: number;
            expanded_j: number;
            degrees_of_freedom?: number;
            shown?: string;
        } | {
            standard_kg_m3: number;
            expanded_kg_m3: number;
            degrees_of_freedom?: number;
            shown?: string;
        } | {
            standard_n_per_m: number;
            expanded_n_per_m: number;
            degrees_of_freedom?: number;
            shown?: string;
        } | {
            standard: number;
            expanded: number;
            degrees_of_freedom?: number;
            shown?: string;
        } | {
            standard_per_s: number;
            expanded_per_s: number;
            degrees_of_freedom?: number;
            shown?: string;
        };
        /** @description What part of the shaft; numbers count from end A, from 1. */
        Common_where: "shaft" | {
            rotor: number;
        } | {
            station: number;
        };
        /** @description What the sentence was filled from: whole numbers, texts, ids of words, quantities, or lists. */
        Common_args: {
            [key: string]: number | string | components["schemas"]["Common_quantity"] | (number | string)[];
        };
        Common_code: string;
        /** @description What to do. */
        Common_message: {
            code: components["schemas"]["Common_code"];
            args: components["schemas"]["Common_args"];
            says: string;
        };
        /** @description What a sum says, and what to do about it. */
        Common_finding: {
            code: components["schemas"]["Common_code"];
            severity: components["schemas"]["Common_severity"];
            where: components["schemas"]["Common_where"];
            args: components["schemas"]["Common_args"];
            says: string;
            do?: components["schemas"]["Common_message"];
        };
        Common_place: {
            file: string;
            /** @description 0: the whole file. */
            line: number;
            column: number;
            quoted?: string;
        };
        /** @description Something unusable: the field, what was given, what is allowed, where it stands. */
        Common_problem: {
            code: components["schemas"]["Common_code"];
            field: string;
            given: string;
            read: string;
            allowed: string;
            mend: string;
            place?: components["schemas"]["Common_place"];
        };
        Common_origin: {
            /** @enum {unknown} */
            kind: "given" | "measured" | "computed" | "assumed" | "published";
            where: string;
            /** @description A source in words, where `where` is its key. */
            where_say?: string;
        };
        Common_input: {
            name: string;
            symbol: string;
            value: components["schemas"]["Common_value"];
            origin: components["schemas"]["Common_origin"];
            typed?: string;
            uncertainty?: components["schemas"]["Common_uncertainty"];
            /** @description The working that a computed input came from. */
            from?: components["schemas"]["Common_working"];
        };
        Common_output: {
            name: string;
            symbol: string;
            value: components["schemas"]["Common_value"];
            uncertainty?: components["schemas"]["Common_uncertainty"];
        };
        /** @description What the doubtful inputs make of one output: by first order and by draws, and which input does how much. */
        Common_doubt: {
            output: string;
            /** @description Both ends of the linear interval agree with the drawn ones. */
            linear_holds: boolean;
            linear: {
                degrees_of_freedom?: number;
            } & {
                [key: string]: number;
            };
            /** @description Missing where draws fell where the figure does not hold. */
            drawn?: {
                [key: string]: number;
            };
            /** @description Greatest part first. */
            shares: ({
                input: string;
                /** @description Place among the inputs, from 0. */
                place: number;
                /** @description Of the variance. */
                part: number;
            } & {
                [key: string]: number;
            })[];
        };
        /** @description A figure of a whole shaft, what the definition's doubts make of it, and which field does how much. */
        Common_told_doubt: {
            /** @description Which one: "rows[0].couple". */
            figure: string;
            name: string;
            /** @description Which part or way, where there are several. */
            of?: string;
            value: components["schemas"]["Common_quantity"];
            /** @description Greatest part first. */
            shares: ({
                /** @description Path in the shaft file. */
                field: string;
                /** @description Of the variance. */
                part: number;
            } & {
                [key: string]: number;
            })[];
            /** @description The same in words; the last says what to measure better, where one field carries a quarter or more. */
            says: string[];
        } & {
            [key: string]: number;
        };
        /** @description A result with everything it came from. */
        Common_working: {
            figure: string;
            title: string;
            /** @description The first is the main one. */
            outputs: components["schemas"]["Common_output"][];
            answer?: components["schemas"]["Common_answer"];
            formula: string;
            inputs: components["schemas"]["Common_input"][];
            sources: string[];
            sources_say?: string[];
            findings: components["schemas"]["Common_finding"][];
            /** @description Only where an input was given with a doubt. */
            doubt?: components["schemas"]["Common_doubt"][];
            /** @description How many draws the drawn intervals rest on. */
            draws?: number;
        };
        /** @enum {unknown} */
        Common_stage: "booking_in" | "finding" | "plan" | "teardown" | "inspection" | "kit" | "press" | "timing" | "stack" | "torque" | "test_run" | "release";
        Common_stage_report: {
            stage: components["schemas"]["Common_stage"];
            worst: components["schemas"]["Common_severity"];
            findings: components["schemas"]["Common_finding"][];
            workings: {
                where: components["schemas"]["Common_where"];
                about: string;
                /** @description What its answer is worth with the gauges that took it, which the working knows nothing of: the one that counts. */
                answer?: components["schemas"]["Common_answer"];
                working: components["schemas"]["Common_working"];
            }[];
            /** @description Readings that a figure could not be computed from. */
            problems: components["schemas"]["Common_problem"][];
        };
        /** figure NAME: what a figure takes and gives */
        FigureSpec: {
            name: string;
            title: string;
            /** @description Where it belongs at the bench. */
            section: {
                /** @enum {unknown} */
                name: "teardown" | "metrology" | "fits" | "bearings" | "timing" | "dynamics" | "beam" | "stack" | "fasteners";
                title: string;
            };
            formula: string;
            inputs: {
                name: string;
                symbol: string;
                meaning: string;
                kind: components["schemas"]["Common_kind"] | ("choice" | "text");
                choices?: string[];
                range?: {
                    /** @constant */
                    above_least?: true;
                } & {
                    [key: string]: number;
                };
                repeated: boolean;
                optional: boolean;
                /** @description Used, and marked assumed, when left out. */
                assumed?: {
                    value: components["schemas"]["Common_value"];
                    from: string;
                };
            }[];
            outputs: {
                name: string;
                symbol: string;
                meaning: string;
                kind: components["schemas"]["Common_kind"] | "word";
            }[];
            sources: string[];
            limits: string;
            example: {
                inputs: string[];
                expected: string;
            };
        };
    };
    responses: never;
    parameters: never;
    requestBodies: never;
    headers: never;
    pathItems: never;
}
export type $defs = Record<string, never>;
export interface operations {
    workshop: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            /** @description The workshop */
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Workshop"];
                };
            };
            /** @description The request cannot be read: names the field. */
            400: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description Host, origin or device not let in. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description The store is busy or full; nothing was kept. */
            503: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
        };
    };
    people: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            /** @description People */
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["People"];
                };
            };
            /** @description The request cannot be read: names the field. */
            400: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description Host, origin or device not let in. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description The store is busy or full; nothing was kept. */
            503: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
        };
    };
    putPerson: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["Person"];
            };
        };
        responses: {
            /** @description Kept */
            201: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Person"];
                };
            };
            /** @description The request cannot be read: names the field. */
            400: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description Host, origin or device not let in. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description That id is somebody else, or somebody at work here has that name. */
            409: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description The body is too large. */
            413: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description Not JSON in UTF-8. */
            415: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description Read, but not possible: names the field. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description The store is busy or full; nothing was kept. */
            503: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
        };
    };
    setAtWork: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                /** @description A person. */
                id: components["schemas"]["Id"];
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["AtWorkIn"];
            };
        };
        responses: {
            /** @description As it is now */
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Person"];
                };
            };
            /** @description The request cannot be read: names the field. */
            400: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description Host, origin or device not let in. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description Not there. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description Somebody at work here has that name by now. */
            409: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description The body is too large. */
            413: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description Not JSON in UTF-8. */
            415: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description Read, but not possible: names the field. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description The store is busy or full; nothing was kept. */
            503: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
        };
    };
    customers: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            /** @description Customers */
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Customers"];
                };
            };
            /** @description The request cannot be read: names the field. */
            400: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description Host, origin or device not let in. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description The store is busy or full; nothing was kept. */
            503: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
        };
    };
    putCustomer: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["Customer"];
            };
        };
        responses: {
            /** @description Kept */
            201: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Customer"];
                };
            };
            /** @description The request cannot be read: names the field. */
            400: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description Host, origin or device not let in. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description That id or number is taken by something else. */
            409: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description The body is too large. */
            413: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description Not JSON in UTF-8. */
            415: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description Read, but not possible: names the field. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description The store is busy or full; nothing was kept. */
            503: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
        };
    };
    board: {
        parameters: {
            query?: {
                units?: "metric" | "inch";
            };
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            /** @description The board */
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Board"];
                };
            };
            /** @description The request cannot be read: names the field. */
            400: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description Host, origin or device not let in. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description The store is busy or full; nothing was kept. */
            503: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
        };
    };
    machines: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            /** @description Machines */
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Machines"];
                };
            };
            /** @description The request cannot be read: names the field. */
            400: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description Host, origin or device not let in. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description The store is busy or full; nothing was kept. */
            503: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
        };
    };
    putMachine: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["Machine"];
            };
        };
        responses: {
            /** @description Kept */
            201: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Machine"];
                };
            };
            /** @description The request cannot be read: names the field. */
            400: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description Host, origin or device not let in. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description That id or number is taken by something else. */
            409: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description The body is too large. */
            413: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description Not JSON in UTF-8. */
            415: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description Read, but not possible: names the field. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description The store is busy or full; nothing was kept. */
            503: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
        };
    };
    machine: {
        parameters: {
            query?: {
                units?: "metric" | "inch";
            };
            header?: never;
            path: {
                id: components["schemas"]["Id"];
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            /** @description The machine */
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["MachineView"];
                };
            };
            /** @description The request cannot be read: names the field. */
            400: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description Host, origin or device not let in. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description Not there. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description The store is busy or full; nothing was kept. */
            503: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
        };
    };
    machineJobs: {
        parameters: {
            query?: {
                limit?: number;
                before?: components["schemas"]["Instant"];
            };
            header?: never;
            path: {
                id: components["schemas"]["Id"];
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            /** @description Jobs */
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["JobRecords"];
                };
            };
            /** @description The request cannot be read: names the field. */
            400: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description Host, origin or device not let in. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description Not there. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description The store is busy or full; nothing was kept. */
            503: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
        };
    };
    putHours: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                id: components["schemas"]["Id"];
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["HourReading"];
            };
        };
        responses: {
            /** @description Kept */
            201: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["HourReading"];
                };
            };
            /** @description The request cannot be read: names the field. */
            400: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description Host, origin or device not let in. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description Not there. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description That id or number is taken by something else. */
            409: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description The body is too large. */
            413: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description Not JSON in UTF-8. */
            415: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description Read, but not possible: names the field. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description The store is busy or full; nothing was kept. */
            503: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
        };
    };
    shafts: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            /** @description Shafts */
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Shafts"];
                };
            };
            /** @description The request cannot be read: names the field. */
            400: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description Host, origin or device not let in. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description The store is busy or full; nothing was kept. */
            503: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
        };
    };
    putShaft: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["ShaftIn"];
            };
        };
        responses: {
            /** @description Kept */
            201: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["ShaftRecord"];
                };
            };
            /** @description The request cannot be read: names the field. */
            400: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description Host, origin or device not let in. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description That id or number is taken by something else. */
            409: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description It has changed since it was seen. */
            412: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description The body is too large. */
            413: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description Not JSON in UTF-8. */
            415: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description Read, but not possible: names the field. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description The store is busy or full; nothing was kept. */
            503: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
        };
    };
    checkShaft: {
        parameters: {
            query?: {
                units?: "metric" | "inch";
            };
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["ShaftText"];
            };
        };
        responses: {
            /** @description What it says */
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["ShaftCheck"];
                };
            };
            /** @description The request cannot be read: names the field. */
            400: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description Host, origin or device not let in. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description The body is too large. */
            413: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description Not JSON in UTF-8. */
            415: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description Read, but not possible: names the field. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description The store is busy or full; nothing was kept. */
            503: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
        };
    };
    shaft: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                id: components["schemas"]["Id"];
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            /** @description The version */
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["ShaftRecord"];
                };
            };
            /** @description The request cannot be read: names the field. */
            400: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description Host, origin or device not let in. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description Not there. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description The store is busy or full; nothing was kept. */
            503: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
        };
    };
    study: {
        parameters: {
            query?: {
                /** @description Left out: the shaft as it is defined, facing, an even step and the quietest arrangement, as far as they differ. */
                ways?: string;
                /** @description Of the study; left out: shaft and count of ways. */
                name?: string;
                /** @description Force that the ground lifts each rotor with, besides the loads of the definition ('1.5 kN'). */
                ground?: string;
                /** @description How far mass, inertia and lean of a rotor may be from what is said, as a share of its couple ('3 %'); left out: 2 %. */
                error_share?: string;
                /** @description Play of the halves on the shaft ('0.5°'); left out: half a degree. */
                error_azimuth?: string;
                units?: "metric" | "inch";
            };
            header?: never;
            path: {
                /** @description A version of a definition. */
                id: components["schemas"]["Id"];
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            /** @description The study */
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["StudyView"];
                };
            };
            /** @description The request cannot be read: names the field. */
            400: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description Host, origin or device not let in. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description Not there. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description Read, but not possible: names the field ("ways[1].lean"), the value and what is allowed. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description The store is busy or full; nothing was kept. */
            503: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
        };
    };
    studyFile: {
        parameters: {
            query?: {
                /** @description Left out: the shaft as it is defined, facing, an even step and the quietest arrangement, as far as they differ. */
                ways?: string;
                /** @description Of the study; left out: shaft and count of ways. */
                name?: string;
                /** @description Force that the ground lifts each rotor with, besides the loads of the definition ('1.5 kN'). */
                ground?: string;
                /** @description How far mass, inertia and lean of a rotor may be from what is said, as a share of its couple ('3 %'); left out: 2 %. */
                error_share?: string;
                /** @description Play of the halves on the shaft ('0.5°'); left out: half a degree. */
                error_azimuth?: string;
                units?: "metric" | "inch";
                paper?: "a4" | "letter";
            };
            header?: never;
            path: {
                /** @description A version of a definition. */
                id: components["schemas"]["Id"];
                file: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            /** @description The file */
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/pdf": unknown;
                    "image/svg+xml": unknown;
                    "text/csv": unknown;
                };
            };
            /** @description The request cannot be read: names the field. */
            400: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description Host, origin or device not let in. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description Not there. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description Read, but not possible: names the field ("ways[1].lean"), the value and what is allowed. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description The store is busy or full; nothing was kept. */
            503: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
        };
    };
    pattern: {
        parameters: {
            query?: {
                /** @description By what an arrangement is judged; left out: the larger of the forces in the planes of the outermost hangers. */
                judged?: "larger-plane" | "both-planes" | "couple";
                /** @description Between the tines of neighbours ('20 mm'); left out: they only must not strike. */
                least_gap?: string;
                /** @description Rotors that stay, each with the flat of its half A, counted from end A: '3=4,4=1'. */
                stay?: string;
                /** @description How far mass, inertia and lean of a rotor may be from what is said, as a share of its couple ('3 %'); left out: 2 %. */
                error_share?: string;
                /** @description Play of the halves on the shaft ('0.5°'); left out: half a degree. */
                error_azimuth?: string;
                /** @description Among those that leave less than can be measured the hangers choose. */
                by_hangers?: boolean;
                units?: "metric" | "inch";
            };
            header?: never;
            path: {
                /** @description A version of a definition. */
                id: components["schemas"]["Id"];
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            /** @description As `flatwise pattern --json` says it */
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["PatternReport"];
                };
            };
            /** @description The request cannot be read: names the field. */
            400: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description Host, origin or device not let in. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description Not there. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description Read, but not possible: names the field ("stay"), the value and what is allowed. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description The store is busy or full; nothing was kept. */
            503: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
        };
    };
    patternFile: {
        parameters: {
            query?: {
                /** @description By what an arrangement is judged; left out: the larger of the forces in the planes of the outermost hangers. */
                judged?: "larger-plane" | "both-planes" | "couple";
                /** @description Between the tines of neighbours ('20 mm'); left out: they only must not strike. */
                least_gap?: string;
                /** @description Rotors that stay, each with the flat of its half A, counted from end A: '3=4,4=1'. */
                stay?: string;
                /** @description How far mass, inertia and lean of a rotor may be from what is said, as a share of its couple ('3 %'); left out: 2 %. */
                error_share?: string;
                /** @description Play of the halves on the shaft ('0.5°'); left out: half a degree. */
                error_azimuth?: string;
                /** @description Among those that leave less than can be measured the hangers choose. */
                by_hangers?: boolean;
                units?: "metric" | "inch";
                paper?: "a4" | "letter";
            };
            header?: never;
            path: {
                /** @description A version of a definition. */
                id: components["schemas"]["Id"];
                file: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            /** @description The file */
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/pdf": unknown;
                };
            };
            /** @description The request cannot be read: names the field. */
            400: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description Host, origin or device not let in. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description Not there. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description Read, but not possible: names the field ("stay"), the value and what is allowed. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description The store is busy or full; nothing was kept. */
            503: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
        };
    };
    bend: {
        parameters: {
            query?: {
                units?: "metric" | "inch";
            };
            header?: never;
            path: {
                /** @description A version of a definition. */
                id: components["schemas"]["Id"];
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            /** @description As `flatwise bend --json` says it */
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["BendReport"];
                };
            };
            /** @description The request cannot be read: names the field. */
            400: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description Host, origin or device not let in. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description Not there. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description The shaft cannot be worked out as a beam: names the field of its definition and why. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description The store is busy or full; nothing was kept. */
            503: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
        };
    };
    bendFile: {
        parameters: {
            query?: {
                /** @description Lowest speed ('100 /min'); left out: a tenth of the shaft's. */
                from?: string;
                /** @description Highest speed; left out: twice the shaft's. */
                to?: string;
                /** @description How many, both ends counted; left out: 200. The shell takes more. */
                speeds?: number;
                units?: "metric" | "inch";
            };
            header?: never;
            path: {
                /** @description A version of a definition. */
                id: components["schemas"]["Id"];
                file: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            /** @description The file */
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "text/csv": unknown;
                };
            };
            /** @description The request cannot be read: names the field. */
            400: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description Host, origin or device not let in. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description Not there. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description Read, but not possible: names the field ("to"), the value and what is allowed. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description The store is busy or full; nothing was kept. */
            503: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
        };
    };
    bearing: {
        parameters: {
            query?: {
                /** @description Label of a rotor; left out: the one whose bearing ends first. */
                station?: string;
                units?: "metric" | "inch";
            };
            header?: never;
            path: {
                /** @description A version of a definition. */
                id: components["schemas"]["Id"];
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            /** @description As `flatwise bearing --json` says it */
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["BearingReport"];
                };
            };
            /** @description The request cannot be read: names the field. */
            400: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description Host, origin or device not let in. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description Not there. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description Read, but not possible: names the field ("station"), the value and what is allowed. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description The store is busy or full; nothing was kept. */
            503: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
        };
    };
    jobByNumber: {
        parameters: {
            query?: {
                number?: string;
            };
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            /** @description Jobs */
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["JobRecords"];
                };
            };
            /** @description The request cannot be read: names the field. */
            400: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description Host, origin or device not let in. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description The store is busy or full; nothing was kept. */
            503: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
        };
    };
    job: {
        parameters: {
            query?: never;
            header?: {
                "If-None-Match"?: string;
            };
            path: {
                id: components["schemas"]["Id"];
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            /** @description The job */
            200: {
                headers: {
                    ETag?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["JobRecord"];
                };
            };
            /** @description As it was. */
            304: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            /** @description The request cannot be read: names the field. */
            400: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description Host, origin or device not let in. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description Not there. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description The store is busy or full; nothing was kept. */
            503: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
        };
    };
    entries: {
        parameters: {
            query?: {
                after?: number;
            };
            header?: never;
            path: {
                id: components["schemas"]["Id"];
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            /** @description Entries */
            200: {
                headers: {
                    ETag?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Entries"];
                };
            };
            /** @description The request cannot be read: names the field. */
            400: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description Host, origin or device not let in. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description Not there. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description The store is busy or full; nothing was kept. */
            503: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
        };
    };
    record: {
        parameters: {
            query?: never;
            header?: {
                "If-Match"?: string;
            };
            path: {
                id: components["schemas"]["Id"];
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["EntriesIn"];
            };
        };
        responses: {
            /** @description Kept, on the disk */
            201: {
                headers: {
                    ETag?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Saved"];
                };
            };
            /** @description The request cannot be read: names the field. */
            400: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description Host, origin or device not let in. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description That id or number is taken by something else. */
            409: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description It has changed since it was seen. */
            412: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description The body is too large. */
            413: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description Not JSON in UTF-8. */
            415: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description Read, but not possible: names the field. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description The store is busy or full; nothing was kept. */
            503: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
        };
    };
    bench: {
        parameters: {
            query?: {
                units?: "metric" | "inch";
                stage?: components["schemas"]["Stage"];
                station?: number;
                from?: "a" | "b";
                step?: number;
                by?: components["schemas"]["Id"];
            };
            header?: {
                "If-None-Match"?: string;
            };
            path: {
                id: components["schemas"]["Id"];
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            /** @description The screen */
            200: {
                headers: {
                    ETag?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["BenchView"];
                };
            };
            /** @description As it was. */
            304: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            /** @description The request cannot be read: names the field. */
            400: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description Host, origin or device not let in. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description Not there. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description The store is busy or full; nothing was kept. */
            503: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
        };
    };
    report: {
        parameters: {
            query?: {
                units?: "metric" | "inch";
            };
            header?: never;
            path: {
                id: components["schemas"]["Id"];
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            /** @description The report */
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["JobReport"];
                };
            };
            /** @description The request cannot be read: names the field. */
            400: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description Host, origin or device not let in. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description Not there. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description The store is busy or full; nothing was kept. */
            503: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
        };
    };
    sheet: {
        parameters: {
            query?: {
                units?: "metric" | "inch";
                paper?: "a4" | "letter";
                format?: "pdf" | "svg" | "png";
                page?: number;
            };
            header?: never;
            path: {
                id: components["schemas"]["Id"];
                name: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            /** @description The sheet */
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/pdf": unknown;
                    "image/svg+xml": unknown;
                    "image/png": unknown;
                };
            };
            /** @description The request cannot be read: names the field. */
            400: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description Host, origin or device not let in. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description Not there. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description The store is busy or full; nothing was kept. */
            503: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
        };
    };
    gauges: {
        parameters: {
            query?: {
                units?: "metric" | "inch";
            };
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            /** @description GaugesView */
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["GaugesView"];
                };
            };
            /** @description The request cannot be read: names the field. */
            400: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description Host, origin or device not let in. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description The store is busy or full; nothing was kept. */
            503: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
        };
    };
    addGauge: {
        parameters: {
            query?: {
                units?: "metric" | "inch";
            };
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["GaugeIn"];
            };
        };
        responses: {
            /** @description Kept */
            201: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["GaugeCard"];
                };
            };
            /** @description The request cannot be read: names the field. */
            400: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description Host, origin or device not let in. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description That id or number is taken by something else. */
            409: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description The body is too large. */
            413: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description Not JSON in UTF-8. */
            415: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description Read, but not possible: names the field. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description The store is busy or full; nothing was kept. */
            503: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
        };
    };
    noteCalibration: {
        parameters: {
            query?: {
                units?: "metric" | "inch";
            };
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["CalibrationIn"];
            };
        };
        responses: {
            /** @description Kept */
            201: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["GaugeCard"];
                };
            };
            /** @description The request cannot be read: names the field. */
            400: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description Host, origin or device not let in. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description That id or number is taken by something else. */
            409: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description The body is too large. */
            413: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description Not JSON in UTF-8. */
            415: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description Read, but not possible: names the field. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description The store is busy or full; nothing was kept. */
            503: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
        };
    };
    stock: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            /** @description Stock */
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Stock"];
                };
            };
            /** @description The request cannot be read: names the field. */
            400: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description Host, origin or device not let in. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description The store is busy or full; nothing was kept. */
            503: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
        };
    };
    moveStock: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["StockMove"];
            };
        };
        responses: {
            /** @description Kept */
            201: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Stock"];
                };
            };
            /** @description The request cannot be read: names the field. */
            400: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description Host, origin or device not let in. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description That id or number is taken by something else. */
            409: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description The body is too large. */
            413: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description Not JSON in UTF-8. */
            415: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description Read, but not possible: names the field. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description The store is busy or full; nothing was kept. */
            503: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
        };
    };
    stockMoves: {
        parameters: {
            query?: {
                limit?: number;
            };
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            /** @description StockMoves */
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["StockMoves"];
                };
            };
            /** @description The request cannot be read: names the field. */
            400: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description Host, origin or device not let in. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description The store is busy or full; nothing was kept. */
            503: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
        };
    };
    putPart: {
        parameters: {
            query?: never;
            header?: {
                /** @description The `tag` of the part's row as it was seen; left out for a new part. */
                "If-Match"?: string;
            };
            path?: never;
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["PartIn"];
            };
        };
        responses: {
            /** @description Kept */
            201: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Stock"];
                };
            };
            /** @description The request cannot be read: names the field. */
            400: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description Host, origin or device not let in. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description A part of that number is there, with another name or least, and no If-Match said that it was seen. */
            409: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description It has changed since it was seen. */
            412: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description The body is too large. */
            413: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description Not JSON in UTF-8. */
            415: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description Read, but not possible: names the field. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description The store is busy or full; nothing was kept. */
            503: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
        };
    };
    figures: {
        parameters: {
            query?: {
                units?: "metric" | "inch";
            };
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            /** @description The catalogue */
            200: {
                headers: {
                    ETag?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Figures"];
                };
            };
            /** @description As it was. */
            304: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            /** @description The request cannot be read: names the field. */
            400: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description Host, origin or device not let in. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description The store is busy or full; nothing was kept. */
            503: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
        };
    };
    figure: {
        parameters: {
            query?: {
                units?: "metric" | "inch";
            };
            header?: never;
            path: {
                name: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["FigureIn"];
            };
        };
        responses: {
            /** @description The working */
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Working"];
                };
            };
            /** @description The request cannot be read: names the field. */
            400: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description Host, origin or device not let in. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description Not there. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description The body is too large. */
            413: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description Not JSON in UTF-8. */
            415: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description Read, but not possible: names the field. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description The store is busy or full; nothing was kept. */
            503: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
        };
    };
    blob: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                hash: components["schemas"]["Hash"];
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            /** @description The bytes */
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "image/jpeg": unknown;
                    "image/png": unknown;
                    "image/webp": unknown;
                };
            };
            /** @description The request cannot be read: names the field. */
            400: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description Host, origin or device not let in. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description Not there. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description The store is busy or full; nothing was kept. */
            503: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
        };
    };
    putBlob: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                hash: components["schemas"]["Hash"];
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "image/jpeg": unknown;
                "image/png": unknown;
                "image/webp": unknown;
            };
        };
        responses: {
            /** @description Kept */
            201: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["BlobSaved"];
                };
            };
            /** @description The request cannot be read: names the field. */
            400: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description Host, origin or device not let in. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description Too large. */
            413: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description Not a photo. */
            415: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description The bytes are not those of that hash. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description The store is busy or full; nothing was kept. */
            503: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
        };
    };
    events: {
        parameters: {
            query?: {
                after?: number;
            };
            header?: {
                "Last-Event-ID"?: string;
            };
            path?: never;
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            /** @description id: sequence; event: what changed ("job", "machine", "shaft", "stock", "gauge", "person", "customer"); data: {"id": of the job or other row, "entry": id or null}. event: reload; data: {}: too much was missed to be told one by one, or the record is another one: read anew what is shown. A line ": here" when nothing came for a while. */
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "text/event-stream": unknown;
                };
            };
            /** @description The request cannot be read: names the field. */
            400: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description Host, origin or device not let in. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description The store is busy or full; nothing was kept. */
            503: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
        };
    };
    letIn: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["LetIn"];
            };
        };
        responses: {
            /** @description Let in; the token is in an HttpOnly cookie. */
            204: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            /** @description The request cannot be read: names the field. */
            400: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description Not that code. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description Host, origin or device not let in. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description The body is too large. */
            413: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description Not JSON in UTF-8. */
            415: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description Read, but not possible: names the field. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description Too many tries. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description The store is busy or full; nothing was kept. */
            503: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
        };
    };
    offerLetIn: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["OfferLetIn"];
            };
        };
        responses: {
            /** @description A code for one device, with how long it holds. */
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["LetInOffer"];
                };
            };
            /** @description The request cannot be read: names the field. */
            400: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description Host, origin or device not let in. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description The body is too large. */
            413: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description Not JSON in UTF-8. */
            415: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description Read, but not possible: names the field. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description The store is busy or full; nothing was kept. */
            503: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
        };
    };
    tablets: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            /** @description Tablets that are in */
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Tablets"];
                };
            };
            /** @description The request cannot be read: names the field. */
            400: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description Host, origin or device not let in. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description The store is busy or full; nothing was kept. */
            503: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
        };
    };
    takeBackTablet: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                id: components["schemas"]["Id"];
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["TakeBackTablet"];
            };
        };
        responses: {
            /** @description Tablets that are in */
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Tablets"];
                };
            };
            /** @description The request cannot be read: names the field. */
            400: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description Host, origin or device not let in. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description Not there. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description The body is too large. */
            413: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description Not JSON in UTF-8. */
            415: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description Read, but not possible: names the field. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
            /** @description The store is busy or full; nothing was kept. */
            503: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemDetails"];
                };
            };
        };
    };
}
