import { parseMidi, type MidiEvent } from 'midi-file';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { startTestApp, type TestApp } from '../../support/test-app.ts';
import { watch, type WatcherClient } from '../../support/socket-client.ts';
import type { DeskView } from '../../../server/protocol/views.ts';
