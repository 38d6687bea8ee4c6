import { z } from 'zod';

// Without this, zod would try whether text may be run as code, which the page's policy forbids and reports.
z.config({ jitless: true });
